fn main() {
    divan::main()
}
