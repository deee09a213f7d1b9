-- What the journal's page asks for: the first entry of each change. Listings say their designation since this step, too.
CREATE INDEX journal_of_changes ON journal (seq) WHERE seq = change;
