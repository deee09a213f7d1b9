//! People and the team's desk, from the command line.

mod common;

use common::{run, small};

#[test]
fn the_first_administrator_is_invited_from_the_command_line() {
    let folder = small();
    let go = |line: &str| run(folder.path(), line.split(' '));
    let kept = go("keep --project . --into clinic.sqlite --by Kim");
    assert_eq!(kept.code, Some(0), "{}", kept.err);
    let nobody = go("people list --store clinic.sqlite");
    assert!(nobody.out.contains("Nobody may sign in"), "{}", nobody.out);
    let invite = "people invite Ada --as administrator --at https://desk.example.org/ --by Kim --store clinic.sqlite";
    let invited = go(invite);
    assert_eq!(invited.code, Some(0), "{}", invited.err);
    let token = invited
        .out
        .trim_end()
        .strip_prefix("https://desk.example.org/invitations/")
        .unwrap();
    assert_eq!(token.len(), 64);
    assert!(invited.err.contains("leads in once"), "{}", invited.err);
    let list = go("people list --store clinic.sqlite");
    assert!(
        list.out.contains("Ada: invited as administrator, until"),
        "{}",
        list.out
    );
    let journal = go("journal --store clinic.sqlite --json");
    assert!(journal.out.contains("invited Ada as administrator") && !journal.out.contains(token));
    assert_eq!(go("verify --store clinic.sqlite").code, Some(0));
    let odd = go(
        "people invite Ada --as owner --at https://desk.example.org --by Kim --store clinic.sqlite",
    );
    assert_eq!(odd.code, Some(2));
    assert!(
        odd.err
            .contains("reader, inspector, reviewer, administrator"),
        "{}",
        odd.err
    );
    let again = go(
        "people invite Ada --again --at https://desk.example.org --by Kim --store clinic.sqlite",
    );
    assert_eq!(again.code, Some(2));
    assert!(
        again.err.contains("There is nobody named Ada"),
        "{}",
        again.err
    );
}

#[test]
fn a_desk_isn_t_opened_to_a_network_in_clear() {
    let folder = tempfile::tempdir().unwrap();
    for (line, says) in [
        (
            "serve --store clinic.sqlite --team http://desk.example.org",
            "in clear",
        ),
        (
            "serve --store clinic.sqlite --team https://desk.example.org",
            "--behind-proxy",
        ),
        (
            "serve --store clinic.sqlite --team https://desk.example.org --listen 0.0.0.0:8452",
            "--behind-proxy",
        ),
        (
            "serve --store clinic.sqlite --by Kim --listen 0.0.0.0:8452",
            "--team",
        ),
        (
            "serve --store clinic.sqlite --by Kim --team https://desk.example.org",
            "cannot be used",
        ),
        ("serve --store clinic.sqlite", "--by"),
    ] {
        let refused = run(folder.path(), line.split(' '));
        assert_eq!(refused.code, Some(2), "{line}");
        assert!(refused.err.contains(says), "{line}: {}", refused.err);
    }
}
