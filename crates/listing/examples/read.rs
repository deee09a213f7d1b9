//! Prints a listing's reading as JSON.

fn main() {
    let file = std::env::args().nth(2).expect("a file");
    let bytes = std::fs::read(&file).expect("readable");
    let reading = listing::read(&file, &bytes).expect("text");
    println!("{}", serde_json::to_string(&reading).expect("plain data"));
}
