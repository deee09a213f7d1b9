//! The demo project, compiled in.

macro_rules! files {
    ($($path:literal,)*) => {
        /// Its files: path within the project, and contents.
        pub(crate) const FILES: &[(&str, &[u8])] = &[$(($path, include_bytes!(concat!("../demo/", $path)))),*];
    };
}

files! {
    "README.md",
    "barriers.csv",
    "building.toml",
    "judgments.csv",
    "listings/bw-s-0121.txt",
    "listings/ff-d-1102.txt",
    "listings/fw-d-1044.txt",
    "listings/hw-d-0412-ed3.txt",
    "listings/hw-d-0412-ed4.txt",
    "listings/hw-d-0418.txt",
    "listings/hw-d-0437.txt",
    "listings/hw-d-0455.txt",
    "listings/hw-d-0508.txt",
    "listings/hw-d-1063.txt",
    "listings/hw-s-0231.txt",
    "listings/ww-d-1017.txt",
    "marks.csv",
    "pdf/ff-d-1102.pdf",
    "pdf/hw-d-0412-ed4.pdf",
    "pdf/ww-d-1017.pdf",
    "schedule.csv",
}

#[cfg(test)]
mod tests {
    use std::path::{Path, PathBuf};

    use super::FILES;

    #[test]
    fn nothing_of_the_demo_is_left_out() {
        let demo = Path::new(env!("CARGO_MANIFEST_DIR")).join("demo");
        let mut found: Vec<String> = Vec::new();
        let mut folders: Vec<PathBuf> = vec![demo.clone()];
        while let Some(folder) = folders.pop() {
            for entry in std::fs::read_dir(folder).unwrap() {
                let path = entry.unwrap().path();
                if path.is_dir() {
                    folders.push(path);
                } else {
                    found.push(
                        path.strip_prefix(&demo)
                            .unwrap()
                            .to_str()
                            .unwrap()
                            .replace('\\', "/"),
                    );
                }
            }
        }
        found.sort();
        let held: Vec<&str> = FILES.iter().map(|(path, _)| *path).collect();
        assert_eq!(held, found);
    }
}
