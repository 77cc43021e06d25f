//! Cut lists of plans: the rack first, hot-parted pieces, larger sections, and what is refused.

use fh_core::file;
use fh_core::plan::Plan;
use fh_rack::kept::merchant::{self, Merchant};
use fh_rack::kept::rack::{self, Rack};
use fh_rack::kept::shop::{self, Shop};
use fh_rack::list::make::{Aim, CutList, Stock, make};
use fh_rack::list::source::{From, sources};
use fh_rack::list::wanted::{ListError, Ordered};
use fh_rack::list::words::known;
use fh_rack::said::section::parse;
use fh_rack::which::options::{By, options, sort, work_options};

fn plan(title: &str, stock: &str, length: &str) -> Plan {
    let text = format!(
        r#"{{ "firstheat": 1, "title": "{title}", "units": {{ "length": "mm", "marks": "0.1 mm" }}, "bars": [{{ "name": "bar",
        "stock": {{ "square": "{stock}" }}, "segments": [{{ "name": "shank", "form": {{ "plain": {{ "length": "{length}" }} }} }}] }}] }}"#
    );
    file::read(text.as_bytes()).unwrap()
}

fn rack(bars: &[&str]) -> Rack {
    let lines: Vec<String> = bars.iter().map(|bar| format!("{{ \"bar\": \"{bar}\" }}")).collect();
    rack::read(format!("{{ \"firstheat_rack\": 1, \"bars\": [{}] }}", lines.join(", ")).as_bytes()).unwrap()
}

fn merchant(price: &str) -> Merchant {
    let price = if price.is_empty() { String::new() } else { format!(", \"price\": \"{price}\"") };
    let text = format!(
        r#"{{ "firstheat_merchant": 1, "currency": "EUR", "bars": [{{ "sections": ["12 mm square", "16 mm square"], "lengths": ["6 m", "3 m"]{price} }}] }}"#
    );
    merchant::read(text.as_bytes()).unwrap()
}

fn list(order: &[Ordered], rack: &Rack, merchant: &Merchant, shop: &Shop) -> Result<CutList, ListError> {
    make(order, Stock { rack, merchant, shop, kerf_nm: None, keep_from_nm: None }, &|| true, &mut |_| ())
}

#[test]
fn the_rack_is_used_before_anything_is_bought() {
    let order = [Ordered::new(plan("Stake", "12 mm", "497 mm"), 14)];
    let list = list(&order, &rack(&["12 mm square, 1 m"]), &merchant("9.60 each"), &Shop::common()).unwrap();
    let group = &list.groups[0];
    // 14 × 500 = 7000: 12 of a 6 m bar and 2 of the metre on the rack.
    assert_eq!((group.new_bars, group.worth.cost, group.aim), (1, 960, Aim::Cost));
    assert_eq!(
        known(&list, group),
        "2 bars used, 1 bar to buy for EUR 9.60; less is impossible. Scrap 42 mm, and no list leaves less. \
         Pieces and cuts take 7.00 m of 7.00 m."
    );
}

/// Four pieces of 298 mm with 3 mm of kerf take 1204 mm: one bar of 1.9 m leaves 696 mm, which is kept, two odd ends of 950 mm leave
/// 348 mm each, three bars leave a longer offcut. Scrap is the four kerfs, 12 mm, in all three.
#[test]
fn of_lists_with_as_little_scrap_the_one_that_cuts_into_fewest_bars_is_taken() {
    let order = [Ordered::new(plan("Bracket", "12 mm", "298 mm"), 4)];
    let rack = rack(&["12 mm square, 1.9 m", "2 x 12 mm square, 950 mm"]);
    let list = list(&order, &rack, &merchant(""), &Shop::common()).unwrap();
    let [bar] = &list.groups[0].bars[..] else { panic!("{:?}", list.groups[0].bars) };
    assert_eq!((bar.times, bar.cuts.len(), bar.offcut_nm, bar.is_kept), (1, 4, 696_000_000, true));
}

#[test]
fn without_prices_as_few_bars_as_can_be_are_bought() {
    let order = [Ordered::new(plan("Stake", "12 mm", "497 mm"), 25)];
    let list = list(&order, &Rack::default(), &merchant(""), &Shop::common()).unwrap();
    let group = &list.groups[0];
    assert_eq!((group.new_bars, group.aim, group.bound, group.is_first_proven), (3, Aim::NewBars, 3, true));
    assert!(known(&list, group).contains("3 bars to buy; fewer is impossible"));
}

#[test]
fn a_bar_longer_than_its_name_is_cut_by_what_it_measures_and_a_crushed_end_gives_no_piece() {
    let text = r#"{ "firstheat_rack": 1, "bars": [{ "bar": "12 mm square, 1 m", "measured": "1.01 m" }, { "bar": "12 mm square, 1 m", "end": "10 mm" }] }"#;
    let rack = rack::read(text.as_bytes()).unwrap();
    // Two of 502 mm and a kerf are 1007: the first bar alone has them.
    let order = [Ordered::new(plan("Stake", "12 mm", "502 mm"), 3)];
    let list = list(&order, &rack, &merchant(""), &Shop::common()).unwrap();
    let bars: Vec<(u64, usize, i64)> =
        list.groups[0].bars.iter().map(|bar| (bar.times, bar.cuts.len(), bar.offcut_nm / 1_000_000)).collect();
    assert_eq!(bars, [(1, 2, 0), (1, 1, 495)]);
    assert_eq!(list.groups[0].new_bars, 0);
}

#[test]
fn pieces_parted_off_hot_leave_what_is_held() {
    let hot =
        |count| [Ordered { cut: Some("hot cut".to_owned()), ..Ordered::new(plan("Pin", "12 mm", "197 mm"), count) }];
    let (rack, merchant, shop) = (rack(&["12 mm square, 1 m"]), merchant(""), Shop::common());
    // 300 mm stay in the hand: 3 × 200 of the 700 that are left, not 5 of the metre.
    let three = list(&hot(3), &rack, &merchant, &shop).unwrap();
    assert_eq!((three.groups[0].new_bars, three.groups[0].bars[0].offcut_nm), (0, 400_000_000));
    assert!(
        three.groups[0].bars[0].cuts.iter().all(|cut| cut.at_nm == cut.length_nm),
        "each from the end that is there then"
    );
    assert_eq!(list(&hot(4), &rack, &merchant, &shop).unwrap().groups[0].new_bars, 1);
}

#[test]
fn a_piece_may_come_from_a_larger_section_where_that_is_allowed() {
    let stake = plan("Stake", "12 mm", "500 mm");
    let rack = rack(&["16 mm square, 300 mm"]);
    let merchant = merchant::read(b"{ \"firstheat_merchant\": 1 }").unwrap();
    let alone = list(&[Ordered::new(stake.clone(), 1)], &rack, &merchant, &Shop::common()).unwrap();
    assert!(!alone.is_whole());
    let larger = vec![parse("16 mm square").unwrap()];
    let allowed =
        list(&[Ordered { also_from: larger, ..Ordered::new(stake, 1) }], &rack, &merchant, &Shop::common()).unwrap();
    // 500 × 144 / 256 = 281.25, up to the tenth.
    assert!(allowed.is_whole());
    assert_eq!(allowed.groups[0].bars[0].cuts[0].length_nm, 281_300_000);
}

#[test]
fn what_finds_no_bar_is_told_with_by_how_much_it_is_too_long() {
    let order = [Ordered::new(plan("Beam", "12 mm", "6500 mm"), 2), Ordered::new(plan("Stake", "12 mm", "500 mm"), 2)];
    let list = list(&order, &Rack::default(), &merchant("1 each"), &Shop::common()).unwrap();
    assert_eq!(list.groups.len(), 1);
    let left = list.groups[0].left[0];
    assert_eq!((left.count, left.too_long_nm), (2, Some(500_000_000)));
    assert!(!list.is_whole() && !list.groups[0].is_first_proven);
}

#[test]
fn a_million_pieces_and_a_way_of_cutting_that_is_not_known_are_refused() {
    let many = [Ordered::new(plan("Stake", "12 mm", "500 mm"), 1_000_001)];
    assert_eq!(list(&many, &Rack::default(), &merchant(""), &Shop::common()), Err(ListError::TooMany(1_000_001)));
    let laser = [Ordered { cut: Some("laser".to_owned()), ..Ordered::new(plan("Stake", "12 mm", "500 mm"), 1) }];
    let words = list(&laser, &Rack::default(), &merchant(""), &Shop::common()).unwrap_err().to_string();
    assert!(words.contains("no way of cutting called \"laser\"") && words.contains("chop saw"), "{words}");
}

#[test]
fn a_shop_without_ways_of_cutting_cuts_without_kerf_and_a_search_can_be_stopped() {
    let shop = shop::read(b"{ \"firstheat_shop\": 1 }").unwrap();
    let order = [Ordered::new(plan("Stake", "12 mm", "500 mm"), 12)];
    let (rack, merchant) = (Rack::default(), merchant(""));
    let stock = Stock { rack: &rack, merchant: &merchant, shop: &shop, kerf_nm: None, keep_from_nm: None };
    let mut told = Vec::new();
    let stopped = make(&order, stock, &|| false, &mut |progress| told.push(progress)).unwrap();
    assert!(stopped.is_whole() && !told.is_empty(), "best fit is there at once");
}

#[test]
fn every_section_that_a_bar_can_be_made_from_is_offered_with_what_it_takes() {
    let text = r#"{ "firstheat": 1, "title": "Stake", "units": { "length": "mm", "marks": "0.1 mm" }, "bars": [{ "name": "stake",
        "stock": { "square": "12 mm" }, "segments": [
        { "name": "point", "form": { "taper": { "length": "60 mm", "to": "point" } } },
        { "name": "shank", "form": { "plain": { "length": "200 mm" } } } ] }] }"#;
    let plan = file::read(text.as_bytes()).unwrap();
    let (rack, merchant) = (rack(&["16 mm square, 300 mm"]), merchant("2.00 per kg"));
    let mut all = options(&plan, 0, &sources(&rack, &merchant).unwrap());
    assert_eq!(all.len(), 2);
    let [own, larger] = ["12 mm square", "16 mm square"]
        .map(|name| all.iter().find(|one| one.section.describe() == name).unwrap().clone());
    assert!(own.is_own && larger.is_on_rack && !own.is_on_rack);
    // 220 mm of 12 mm square, and 123.75 of 16 mm, up to the tenth; both weigh 0.2487 kg.
    assert_eq!((own.length_nm, larger.length_nm), (220_000_000, 123_800_000));
    assert!((own.mass_kg - 0.248_7).abs() < 1e-4 && (larger.mass_kg - 0.248_7).abs() < 1e-4);
    assert_eq!((own.cost, larger.cost), (Some(50), Some(50)));
    // The shank of 0.2261 kg is drawn from 256 to 144 mm² besides the point.
    assert!(own.effort_cm3 < larger.effort_cm3 && larger.drawn.kg > 0.24 && own.drawn.kg < 0.03);
    assert_eq!((own.upset.kg, own.upset.times), (0.0, 1.0));
    work_options(&plan, 0, &mut all, (&fh_work::Shop::default(), 2.0), &|| true, &mut |_| ());
    // Each heat waits two minutes.
    let fires: Vec<_> = all.iter().filter_map(|one| one.fire).collect();
    assert_eq!(fires.len(), all.len());
    assert!(fires.iter().all(|fire| fire.waiting == 2.0 * fire.heats as f64 && fire.all_minutes() > fire.minutes));
    sort(&mut all, By::Effort);
    assert!(all[0].is_own, "the least work first");
    let unused: Vec<bool> =
        sources(&rack, &merchant).unwrap().iter().map(|one| matches!(one.from, From::Rack(_))).collect();
    assert_eq!(unused.iter().filter(|is_rack| **is_rack).count(), 1);
}

#[test]
fn what_speaks_against_a_section_is_told() {
    // A collar of 20 mm square is upset from 12 mm, and more so from a thinner bar.
    let text = r#"{ "firstheat": 1, "title": "Stake", "units": { "length": "mm", "marks": "0.1 mm" }, "bars": [{ "name": "stake",
        "stock": { "square": "20 mm" }, "segments": [{ "name": "head", "form": { "plain": { "length": "40 mm" } } }] }] }"#;
    let plan = file::read(text.as_bytes()).unwrap();
    let all = options(&plan, 0, &sources(&Rack::default(), &merchant("")).unwrap());
    let thin = all.iter().find(|one| one.section.describe() == "12 mm square").unwrap();
    // 40 mm of 20 mm square are 111 mm of 12 mm square, 9.3 thicknesses.
    assert!(thin.against.iter().any(|against| against.id == "upset-buckles"), "{:?}", thin.against);
    assert!(thin.upset.kg > 0.1 && (thin.upset.times - 400.0 / 144.0).abs() < 1e-6);
}
