//! A folder of its own with recipes in it, and the program to run there.

use std::io::Write;
use std::path::{Path, PathBuf};
use std::process::{Command, Stdio};

/// A folder that goes away at the end.
pub struct Bench {
    folder: tempfile::TempDir,
}

/// What a run gave.
#[derive(Debug)]
pub struct Run {
    /// Exit status.
    pub status: i32,
    /// Standard output.
    pub out: String,
    /// Standard error.
    pub err: String,
}

impl Bench {
    /// An empty folder.
    pub fn new() -> Self {
        Self { folder: tempfile::tempdir().unwrap() }
    }

    /// A folder with one recipe.
    pub fn with(name: &str, text: impl AsRef<[u8]>) -> Self {
        let bench = Self::new();
        bench.put(name, text);
        bench
    }

    /// Writes a file, and the folders above it.
    pub fn put(&self, name: &str, text: impl AsRef<[u8]>) -> PathBuf {
        let path = self.folder.path().join(name);
        std::fs::create_dir_all(path.parent().unwrap()).unwrap();
        #[allow(clippy::disallowed_methods, reason = "tests write their own files")]
        std::fs::write(&path, text).unwrap();
        path
    }

    /// Reads a file back.
    #[allow(clippy::disallowed_methods, reason = "tests read their own files")]
    pub fn get(&self, name: &str) -> String {
        std::fs::read_to_string(self.folder.path().join(name)).unwrap()
    }

    /// The folder.
    pub fn path(&self) -> &Path {
        self.folder.path()
    }

    /// Runs the program here.
    pub fn run(&self, arguments: &[&str]) -> Run {
        self.fed(arguments, b"")
    }

    /// Runs the program here with something on standard input.
    pub fn fed(&self, arguments: &[&str], input: &[u8]) -> Run {
        run_in(self.path(), arguments, input)
    }
}

/// Runs the program in a folder.
pub fn run_in(folder: &Path, arguments: &[&str], input: &[u8]) -> Run {
    let mut child = Command::new(env!("CARGO_BIN_EXE_tenter"))
        .args(arguments)
        .current_dir(folder)
        .env_remove("NO_COLOR")
        .stdin(Stdio::piped())
        .stdout(Stdio::piped())
        .stderr(Stdio::piped())
        .spawn()
        .unwrap();
    // A program that ends without reading closes the pipe: no matter.
    let mut pipe = child.stdin.take().unwrap();
    let input = input.to_owned();
    let feeder = std::thread::spawn(move || {
        let _ = pipe.write_all(&input);
    });
    let output = child.wait_with_output().unwrap();
    feeder.join().unwrap();
    Run {
        status: output.status.code().unwrap(),
        out: String::from_utf8(output.stdout).unwrap(),
        err: String::from_utf8(output.stderr).unwrap(),
    }
}

/// The top folder of the project.
pub fn project() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("../..").canonicalize().unwrap()
}

/// The bundled files of a folder under `tests/`.
pub fn bundled(folder: &str) -> Vec<PathBuf> {
    #[allow(clippy::disallowed_methods, reason = "tests look at the bundled files")]
    let mut files: Vec<PathBuf> =
        std::fs::read_dir(project().join("tests").join(folder)).unwrap().map(|entry| entry.unwrap().path()).collect();
    files.retain(|path| path.extension().is_some_and(|ending| ending == "dye"));
    files.sort();
    assert!(files.len() >= 12, "{folder} holds {} files", files.len());
    files
}

/// A sound recipe: nothing to say about it.
pub const SOUND: &str = "\
edition 1

recipe Sound
  room     22 °C

goods tees
  pieces   2
  weight   160 g each
  fibre    100% cotton
  state    scoured, dry

dye sea
  class    reactive dichlorotriazine
  colour   #1d5fa6

mix soda soak
  3 L      water at 40 °C
  60 g/L   soda ash

mix sea bottle
  200 mL   water at 30 °C
  20 g     urea
  6 g      sea

steps
  wear     dust mask, gloves, goggles
  soak     tees in soda soak for 20 min
  squeeze  tees to 100% pickup
  make     sea bottle
  squirt   90 mL/piece from sea bottle on both sides
  batch    tees for 24 h at 22 °C in sealed bag
  rinse    tees in cold water until nearly clear
  soap off tees in 10 L water at 60 °C with 1 g/L textile detergent, 2 times
  dry      tees
";

/// The sound recipe with more drawn from the bottle than it holds: one error.
pub fn overdrawn() -> String {
    SOUND.replace("90 mL/piece", "140 mL/piece")
}

/// The sound recipe with a mix nobody uses: one warning.
pub fn unused_mix() -> String {
    SOUND.replace("\nsteps\n", "\nmix spare bottle\n  100 mL   water\n\nsteps\n")
}
