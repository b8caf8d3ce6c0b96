//! Prints what resolving a file finds: for looking at, not a face.
#![allow(clippy::print_stdout, clippy::disallowed_methods, clippy::unwrap_used)]
use std::sync::Arc;
use tenter_resolve::*;
struct Dir(String);
impl Library for Dir {
    fn document(&self, path: &str) -> Option<Arc<tenter_syntax::Document>> {
        std::fs::read_to_string(format!("{}/{}", self.0, path))
            .ok()
            .map(|t| Arc::new(tenter_syntax::Document::parse(&t)))
    }
}
fn main() {
    let quiet = std::env::var("Q").is_ok();
    for file in std::env::args().skip(1) {
        let text = std::fs::read_to_string(&file).unwrap();
        let doc = tenter_syntax::Document::parse(&text);
        let dir = std::path::Path::new(&file).parent().unwrap().to_str().unwrap().to_owned();
        let name = std::path::Path::new(&file).file_name().unwrap().to_str().unwrap().to_owned();
        for sheet in sheets(&doc, &name, &Dir(dir)) {
            for r in resolve(&sheet, Scale::AsWritten) {
                println!("== {file} {:?} {:?}", r.name.as_ref().map(|n| &n.text), r.variant.as_ref().map(|n| &n.text));
                for p in &r.problems {
                    println!("  ! {:?}: {:?}", sheet.text(p.place), p.kind);
                }
                if quiet {
                    continue;
                }
                let line = |p: tenter_quantity::Place| format!("@{}", sheet.text(p));
                for m in &r.totals.materials {
                    println!(
                        "  {} {} owg {}",
                        r.material(m.material).name,
                        m.mass.as_ref().map_or("-".into(), |f| f.derivation(&line)),
                        m.owg.as_ref().map_or("-".into(), |f| f.show())
                    );
                }
                for m in &r.totals.mixes {
                    println!(
                        "  mix {} {} left {} share {}",
                        r.mix(m.mix).name.text,
                        m.volume.as_ref().or(m.mass.as_ref()).map_or("-".into(), |f| f.show()),
                        m.left.as_ref().map_or("-".into(), |f| f.show()),
                        m.used_share.as_ref().map_or("-".into(), |f| f.show())
                    );
                }
                println!(
                    "  water {} cost {:?}",
                    r.totals.water.as_ref().map_or("-".into(), |f| f.show()),
                    r.totals.cost.iter().map(|c| c.total.show()).collect::<Vec<_>>()
                );
            }
        }
    }
}
