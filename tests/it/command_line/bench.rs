//! The bench sheet: what it holds back, what it says before the first hole.

use gablerow_core::job::{AsCut, Division, Hand, PanelId, Reference};
use gablerow_core::measure::Length;
use serde_json::Value;

use super::{Shop, overruled, without_stops};

#[test]
fn a_cabinet_with_an_open_stop_is_not_on_the_sheet() {
    let said = Shop::new().run(&["bench"]);
    assert_eq!(said.code, Some(1));
    assert!(said.err.starts_with("held back: G3, "), "{}", said.err);
    assert!(said.out.contains(" [ ]  G1 ") && said.out.matches("G3").count() == 1);
}

#[test]
fn a_length_as_cut_is_on_the_sheet_and_what_it_does_to_shelves() {
    let mut job = without_stops();
    job.shop.reference = Reference::OneStop;
    job.cabinets.truncate(1);
    let cut = |um| AsCut {
        length: Some(Length::from_um(um)),
        ..AsCut::of(PanelId::Side(Hand::Left))
    };
    job.cabinets[0].copies[0].as_cut = vec![cut(703_700)];
    let said = Shop::with(&job).run(&["bench", "store.json"]);
    let words: Vec<&str> = said.out.split_whitespace().collect();
    let out = words.join(" ");
    for want in [
        "[ ] G1 copy 1 left side: length 703.7, 0.3 shorter than 704.0",
        "LEVEL G1 copy 1, bay 1: shelves rock 0.3, ~0.2 up to the right, ~0.2 up to the back",
    ] {
        assert!(out.contains(want), "{want}: {out}");
    }
    job.cabinets[0].copies[0].as_cut = vec![cut(702_900)];
    let said = Shop::with(&job).run(&["bench", "store.json"]);
    assert_eq!(said.code, Some(1));
    assert!(said.err.contains("as-cut-length"), "{}", said.err);
}

#[test]
fn there_is_no_sheet_of_nothing() {
    let mut job = overruled();
    job.cabinets.truncate(1);
    job.cabinets[0].accepted.clear();
    let said = Shop::with(&job).run(&["bench", "store.json"]);
    assert_eq!((said.code, said.out.as_str()), (Some(1), ""));
    assert!(said.err.starts_with("held back: G1, "), "{}", said.err);
}

#[test]
fn an_overruled_stop_and_every_warn_are_on_the_sheet() {
    let mut job = overruled();
    // A shelf that sags under what it shall bear is a warn.
    if let Division::Bay(bay) = &mut job.cabinets[0].opening.division {
        bay.shelves[0].load_grams = Some(60_000);
    }
    let shop = Shop::with(&job);
    let said = shop.run(&["bench", "store.json"]);
    assert_eq!(said.code, Some(0), "{}", said.err);
    let (before, _) = said.out.split_once("FIRST").unwrap();
    assert!(
        before.contains("overruled: Ann bores the two by hand"),
        "{before}"
    );
    assert!(before.contains("[shelf-sags]"), "{before}");
    let json = shop.run(&["bench", "store.json", "--json"]);
    assert!(
        json.err
            .contains("overruled: G1, plate-on-pin-hole: Ann bores"),
        "{}",
        json.err
    );
    let set_ups: Value = serde_json::from_str(&json.out).unwrap();
    assert_eq!(set_ups[0]["order"], 1);
}
