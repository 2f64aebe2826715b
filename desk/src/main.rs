//! The command `stillbar`.

fn main() -> std::process::ExitCode {
    stillbar_desk::cli::run()
}
