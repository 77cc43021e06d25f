//! The files of the rack: read with clear errors, written as they were read.

use fh_core::file::FileError;
use fh_rack::kept::{job, merchant, rack, shop};

const RACK: &str = r#"{
  "firstheat_rack": 1,
  "currency": "EUR",
  "bars": [
    { "bar": "3 x 12 mm square, 2.4 m", "lies": "left, below" },
    { "bar": "1/2 in round, 20 ft", "measured": "20 ft 1 1/4 in", "end": "1 in" },
    { "bar": "30 x 8 mm flat, 1,75 m", "price": "1.85 per kg", "note": "a little rust" }
  ],
  "booked": [
    {
      "number": 1,
      "what": "trellis",
      "on": "2026-05-04",
      "took": [{ "bar": "12 mm square, 6 m" }],
      "back": [{ "bar": "12 mm square, 800 mm" }]
    }
  ]
}
"#;

#[test]
fn what_was_read_is_written_again_letter_by_letter() {
    assert_eq!(rack::write(&rack::read(RACK.as_bytes()).unwrap()), RACK);
    assert_eq!(merchant::write(&merchant::Merchant::common()), merchant::COMMON);
    assert_eq!(shop::write(&shop::Shop::common()), shop::COMMON);
    let rack = rack::read(RACK.as_bytes()).unwrap();
    assert_eq!((rack.count(), rack.bars[1].length_nm(), rack.bars[1].end_nm()), (5, 6_127_750_000, 25_400_000));
}

#[test]
fn the_list_that_comes_with_the_program_has_no_price() {
    let merchant = merchant::Merchant::common();
    assert!(merchant.bars.len() >= 6 && merchant.bars.iter().all(|line| line.price.is_none()));
    let lengths =
        |line: &merchant::MerchantLine| line.lengths.iter().map(|one| one.text().to_owned()).collect::<Vec<_>>();
    assert!(
        merchant
            .bars
            .iter()
            .all(|line| [vec!["6 m", "3 m"], vec!["20 ft"]]
                .contains(&lengths(line).iter().map(String::as_str).collect()))
    );
    let shop = shop::Shop::common();
    assert!(shop.rate.is_none() && shop.tax.is_none() && shop.finishes.is_empty());
    assert_eq!(shop.cutting(None).unwrap().name, "chop saw");
}

/// What a reader says of a text.
fn told<T: std::fmt::Debug>(read: fn(&[u8]) -> Result<T, FileError>, text: &str) -> String {
    read(text.as_bytes()).unwrap_err().to_string()
}

#[test]
fn wrong_entries_of_a_rack_are_told_with_line_and_key() {
    let of = |bars: &str| format!("{{\n  \"firstheat_rack\": 1, \"currency\": \"EUR\",\n  \"bars\": [{bars}]\n}}");
    for (bars, words) in [
        (r#"{ "bar": "12 mm square" }"#, "line 3, column 21, at bars[0].bar: \"12 mm square\": the length is missing"),
        (r#"{ "bar": "12 mm square, 0 mm" }"#, "a size greater than 0 belongs here"),
        (r#"{ "bar": 12 }"#, "the number 12 was found; a bar stands in quotes"),
        (r#"{ "bar": "12 mm square, 1 m", "lenght": "2 m" }"#, "at bars[0].lenght: there is no key \"lenght\" here"),
        (r#"{ "bar": "12 mm square, 1 m", "price": "-4" }"#, "at bars[0].price: \"-4\" is below 0"),
        (
            r#"{ "bar": "12 mm square, 1 m", "price": "4.00 USD" }"#,
            "at bars[0].price: \"4.00 USD\" is in USD, and the money here is EUR; one list has one currency",
        ),
        (r#"{ "bar": "12 mm square, 1 m", "price": "4.00 per hour" }"#, "a price per hour means nothing here"),
        (r#"{ "bar": "12 mm square, 1 m", "end": "1 m" }"#, "the end that gives no piece is as long as the bar"),
        (r#"{ "bar": "12 mm square, 1 m", "material": "cheese" }"#, "there is no material \"cheese\" here"),
        (r#"{ "bar": "12 mm square, 1 m", "measured": "1 to 2 m" }"#, "one length belongs here"),
        (r#"{ "bar": "12 mm square, 1 m", "note": null }"#, "null means nothing here"),
        (r#"{ "bar": ["12 mm square, 1 m"] }"#, "a list in [ ] was found"),
    ] {
        let said = told(rack::read, &of(bars));
        assert!(said.starts_with("line 3, column") && said.contains(words), "{bars}: {said}");
    }
    assert!(told(rack::read, "{ \"firstheat_rack\": 2, \"bars\": [] }").contains("written by a newer First Heat"));
    assert!(told(rack::read, "{ \"firstheat\": 1, \"bars\": [] }").contains("this isn't a rack of First Heat"));
    assert!(told(rack::read, "{ \"firstheat_rack\": 1, \"decimals\": 9 }").contains("at most 4 figures"));
    let amount = told(rack::read, "{ \"firstheat_rack\": 1, \"currency\": \"1.10 per lb\" }");
    assert!(amount.contains("at currency: “1.10 per lb” isn't a name of a currency"), "{amount}");
}

#[test]
fn wrong_entries_of_a_merchants_list_are_told_with_line_and_key() {
    let of = |line: &str| format!("{{ \"firstheat_merchant\": 1, \"bars\": [\n{line}] }}");
    for (line, words) in [
        (r#"{ "sections": ["12 mm"], "lengths": ["6 m"] }"#, "at bars[0].sections[0]: \"12 mm\" is not a bar shape"),
        (r#"{ "sections": ["12 mm square"], "lengths": ["0 m"] }"#, "at bars[0].lengths[0]"),
        (r#"{ "sections": ["12 mm square"], "lengths": ["900 m"] }"#, "longer than 100 m"),
        (r#"{ "sections": ["12 mm square"], "lengths": ["6 m"], "price": "2 per stone" }"#, "what is the price for?"),
        (r#"{ "sections": ["12 mm square"], "lengths": ["6 m"], "at_most": -1 }"#, "at bars[0].at_most"),
        (r#"{ "sections": ["12 mm square"], "lengths": ["10 mm"], "end": "20 mm" }"#, "no longer than the end"),
    ] {
        let said = told(merchant::read, &of(line));
        assert!(said.starts_with("line 2") && said.contains(words), "{line}: {said}");
    }
}

#[test]
fn wrong_figures_of_a_shop_are_told_with_line_and_key() {
    let of = |line: &str| format!("{{ \"firstheat_shop\": 1, \"currency\": \"EUR\",\n{line} }}");
    for (line, words) in [
        (r#""rate": "42 per kg""#, "at rate: a price per kg means nothing here; it may be per hour"),
        (r#""rate": "42 GBP per hour""#, "in GBP, and the money here is EUR"),
        (r#""profit": { "margin": "100 %" }"#, "at profit.margin: a margin of 100 % would leave no cost"),
        (r#""profit": { "markup": "-5 %" }"#, "isn't a share"),
        (r#""deposit": "150 %""#, "a deposit is no more than the price"),
        (r#""learning": "20 %""#, "learning runs from 50 % to 100 %"),
        (r#""overhead": { "yearly": "18000", "hours": 0 }"#, "at overhead.hours"),
        (r#""irons": 0"#, "1 to 20 irons"),
        (r#""cutting": [{ "name": "saw", "kerf": "-1 mm" }]"#, "at cutting[0].kerf"),
        (r#""cutting": [{ "name": "saw", "kerf": "1 m" }]"#, "a cut of 1 m is too wide"),
        (r#""heat_up": "4""#, "\"4\" isn't a time"),
        (r#""hours": "often""#, "there is no \"often\" here"),
        (r#""finishes": [{ "name": "oil", "price": "2 per hour" }]"#, "at finishes[0].price"),
    ] {
        let said = told(shop::read, &of(line));
        assert!(said.starts_with("line 2") && said.contains(words), "{line}: {said}");
    }
}

#[test]
fn wrong_entries_of_a_job_are_told_with_line_and_key() {
    let of = |rest: &str| format!("{{ \"firstheat_job\": 1,\n{rest} }}");
    for (rest, words) in [
        (r#""plans": []"#, "a job needs at least one plan"),
        (r#""plans": [{ "plan": "a.plan.json", "count": 0 }]"#, "at plans[0].count: 0 was found"),
        (r#""plans": [{ "plan": "a.plan.json", "count": 9999999 }]"#, "a count runs from 1 to 100000"),
        (r#""plans": [{ "plan": "  " }]"#, "at plans[0].plan"),
        (r#""plans": [{ "plan": "a" }], "lines": [{ "kind": "design" }]"#, "give this design a time, a price or both"),
        (r#""plans": [{ "plan": "a" }], "lines": [{ "kind": "magic", "price": "1" }]"#, "there is no \"magic\" here"),
        (r#""plans": [{ "plan": "a" }], "lines": [{ "kind": "parts", "price": "2 per kg" }]"#, "means nothing here"),
        (r#""plans": [{ "plan": "a" }], "discount": "200 %""#, "a discount is at most 100 %"),
    ] {
        let said = told(job::read, &of(rest));
        assert!(said.starts_with("line 2") && said.contains(words), "{rest}: {said}");
    }
    assert!(job::is_job(b"{ \"firstheat_job\": 1 }") && !job::is_job(b"{ \"firstheat\": 1 }"));
}

#[test]
fn each_sort_of_file_has_a_schema_that_names_its_keys_and_knows_no_null() {
    for (schema, key) in [
        (rack::schema(), "firstheat_rack"),
        (merchant::schema(), "firstheat_merchant"),
        (shop::schema(), "firstheat_shop"),
        (job::schema(), "firstheat_job"),
    ] {
        assert!(schema["properties"][key].is_object(), "{key}");
        assert!(!schema.to_string().contains("\"null\""), "{key}");
        assert_eq!(schema["additionalProperties"], false, "{key}");
    }
}

/// Reading is tried on texts with something changed, at every place in turn.
#[test]
fn nothing_that_a_file_may_hold_makes_a_reader_stumble() {
    let shop = shop::COMMON;
    let job = r#"{ "firstheat_job": 1, "plans": [{ "plan": "a", "count": 3, "also_from": ["12 mm square"] }], "lines": [{ "kind": "design", "time": "1 h", "price": "3.00" }] }"#;
    let merchant = r#"{ "firstheat_merchant": 1, "bars": [{ "sections": ["12 mm square"], "lengths": ["6 m"], "price": "1.85 per kg" }] }"#;
    for at in (0..RACK.len().max(shop.len())).filter(|at| at % 3 == 0) {
        for put in ["", "9999999999999999999", "-", "\u{0}", "é", "[", "}", "\"", "1e999", "½", ",", " x "] {
            let changed = |text: &str| {
                let at = (0..=at.min(text.len())).rev().find(|at| text.is_char_boundary(*at)).unwrap_or(0);
                let end = (at + 1..=text.len()).find(|end| text.is_char_boundary(*end)).unwrap_or(text.len());
                format!("{}{put}{}", &text[..at], &text[end..]).into_bytes()
            };
            let _ = rack::read(&changed(RACK)).map(|rack| rack::write(&rack));
            let _ = shop::read(&changed(shop)).map(|shop| shop::write(&shop));
            let _ = job::read(&changed(job)).map(|job| job::write(&job));
            let _ = merchant::read(&changed(merchant)).map(|merchant| merchant::write(&merchant));
        }
    }
}
