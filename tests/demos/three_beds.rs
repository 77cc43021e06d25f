//! The job of three beds: four demo plans in inches and millimetres on a rack with odd ends, worked by hand.

use fh_core::file;
use fh_print::drawing::{Drawing, Item};
use fh_print::paper::Paper;
use fh_print::sheets::{CutHead, QuoteHead, customer_page, cut_sheets, reckoning};
use fh_rack::kept::booking::{book, undo};
use fh_rack::kept::job::{self, Job};
use fh_rack::kept::merchant::{self, Merchant};
use fh_rack::kept::rack::{self, Rack};
use fh_rack::kept::shop::{self, Shop};
use fh_rack::list::booked::{put_back, taken};
use fh_rack::list::make::{CutList, Group, Stock, make};
use fh_rack::list::source::From;
use fh_rack::list::wanted::Ordered;
use fh_rack::quote::quoted::quote;
use fh_rack::said::written::Said;
use std::fs;
use tests::project;

struct Beds {
    job: Job,
    rack: Rack,
    merchant: Merchant,
    shop: Shop,
}

fn text(name: &str) -> String {
    fs::read_to_string(project().join("demo-plans/jobs").join(name)).unwrap()
}

fn beds() -> Beds {
    Beds {
        job: job::read(text("three-beds.job.json").as_bytes()).unwrap(),
        rack: rack::read(text("three-beds.rack.json").as_bytes()).unwrap(),
        merchant: merchant::read(text("three-beds.merchant.json").as_bytes()).unwrap(),
        shop: shop::read(text("three-beds.shop.json").as_bytes()).unwrap(),
    }
}

impl Beds {
    fn stock(&self) -> Stock<'_> {
        let Self { rack, merchant, shop, .. } = self;
        Stock { rack, merchant, shop, kerf_nm: None, keep_from_nm: None }
    }

    fn order(&self) -> Vec<Ordered> {
        let read = |line: &job::JobPlan| {
            let plan = file::read(text(&line.plan).as_bytes()).unwrap();
            Ordered::new(plan, line.pieces())
        };
        self.job.plans.iter().map(read).collect()
    }

    fn list(&self) -> CutList {
        make(&self.order(), self.stock(), &|| true, &mut |_| ()).unwrap()
    }
}

fn of<'a>(list: &'a CutList, section: &str) -> &'a Group {
    list.groups.iter().find(|group| group.sections[0] == section).unwrap_or_else(|| panic!("no group of {section}"))
}

/// For each bar: whether it is new, its length in mm, how many pieces, and the offcut in mm.
fn bars(list: &CutList, section: &str) -> Vec<(bool, f64, usize, f64)> {
    let bars = of(list, section).bars.iter().flat_map(|bar| std::iter::repeat_n(bar, bar.times as usize));
    bars.map(|bar| {
        let source = &list.sources[bar.source];
        let new = matches!(source.from, From::New(_));
        (new, source.length_nm as f64 / 1e6, bar.cuts.len(), bar.offcut_nm as f64 / 1e6)
    })
    .collect()
}

#[test]
fn the_files_are_in_the_programs_own_layout() {
    let beds = beds();
    assert_eq!(job::write(&beds.job), text("three-beds.job.json"));
    assert_eq!(rack::write(&beds.rack), text("three-beds.rack.json"));
    assert_eq!(merchant::write(&beds.merchant), text("three-beds.merchant.json"));
    assert_eq!(shop::write(&beds.shop), text("three-beds.shop.json"));
}

#[test]
fn every_piece_is_as_long_as_its_mark_sheet_says() {
    let list = beds().list();
    let lengths: Vec<(u64, f64)> =
        list.wanted.pieces.iter().map(|piece| (piece.count, piece.ways[0].length_nm as f64 / 1e6)).collect();
    // 9 1/8 in is 231.775 mm, 10 11/16 in is 271.4625 mm: up to the tenth.
    assert_eq!(lengths, [(6, 231.8), (12, 298.0), (18, 318.0), (18, 173.0), (6, 271.5)]);
}

#[test]
fn the_odd_ends_are_used_and_two_bars_bought() {
    let list = beds().list();
    // 6 × (231.8 + 3) = 1408.8 of 5 ft, 1524 mm.
    assert_eq!(bars(&list, "1/2 in square"), [(false, 1524.0, 6, 115.2)]);
    // 6 × 301 = 1806 of 1900, and 3 × 301 = 903 of each 950: all 12 from the rack.
    assert_eq!(
        bars(&list, "12 mm square"),
        [(false, 1900.0, 6, 94.0), (false, 950.0, 3, 47.0), (false, 950.0, 3, 47.0)]
    );
    // 6 × (271.5 + 3) = 1647 of 6 ft 1/2 in, 1841.5 mm.
    assert_eq!(bars(&list, "1/2 in round"), [(false, 1841.5, 6, 194.5)]);
    // 17 × 321 = 5457 of 6 m, and one of the odd end of 500: without it all 18 would leave 222, too short to keep.
    assert_eq!(bars(&list, "10 mm round"), [(false, 500.0, 1, 179.0), (true, 6000.0, 17, 543.0)]);
    // 5 × 176 = 880 of 1200 leave 320, 13 × 176 = 2288 of 3 m leave 712: both kept, and no other way leaves as much in one.
    assert_eq!(bars(&list, "10 mm square"), [(false, 1200.0, 5, 320.0), (true, 3000.0, 13, 712.0)]);
    assert!(list.groups.iter().all(|group| group.is_proven && group.left.is_empty()));
}

#[test]
fn what_is_bought_costs_its_mass() {
    let list = beds().list();
    let bought: Vec<(String, u64, i64)> = list
        .bought()
        .iter()
        .map(|bought| (bought.source.section.describe(), bought.count, bought.source.price.unwrap()))
        .collect();
    // 6 m of 10 mm round: π/4 × 0.1 × 7.85 × 6 = 3.6992 kg at 1.85 is 6.84. 3 m of 10 mm square: 2.355 kg is 4.36.
    assert_eq!(bought, [("10 mm square".to_owned(), 1, 436), ("10 mm round".to_owned(), 1, 684)]);
    assert!((list.new_mass_kg() - (3.699_2 + 2.355)).abs() < 1e-3);
    assert_eq!(of(&list, "10 mm round").worth.cost + of(&list, "10 mm square").worth.cost, 1120);
}

#[test]
fn the_running_totals_are_measured_from_one_end() {
    let list = beds().list();
    let hooks = &of(&list, "1/2 in square").bars[0].cuts;
    let at: Vec<f64> = hooks.iter().map(|cut| cut.at_nm as f64 / 1e6).collect();
    assert_eq!(at, [231.8, 466.6, 701.4, 936.2, 1171.0, 1405.8]);
}

#[test]
fn booking_takes_the_odd_ends_keeps_three_offcuts_and_can_be_undone() {
    let beds = beds();
    let list = beds.list();
    let (took, back) = (taken(&list, &beds.rack), put_back(&list));
    assert_eq!(took.iter().map(|bar| bar.bar.count).sum::<u32>(), 7);
    let words: Vec<&str> = back.iter().map(|bar| bar.bar.text()).collect();
    assert_eq!(words, ["10 mm round, 543 mm", "10 mm square, 320 mm", "10 mm square, 712 mm"]);
    let booked = book(&beds.rack, &beds.job.title, None, &took, &back).unwrap();
    assert_eq!(booked.count(), 3);
    let (undone, _) = undo(&booked, None).unwrap();
    assert_eq!(undone.count(), beds.rack.count());
    assert!(
        beds.rack
            .bars
            .iter()
            .all(|bar| undone.bars.iter().any(|line| line.is_like(bar) && line.bar.count == bar.bar.count))
    );
}

#[test]
fn a_rack_that_somebody_took_from_meanwhile_is_told_and_nothing_is_booked() {
    let beds = beds();
    let list = beds.list();
    let took = taken(&list, &beds.rack);
    let mut other = beds.rack.clone();
    other.bars.remove(1);
    let refused = book(&other, "", None, &took, &[]).unwrap_err().to_string();
    assert!(refused.contains("1 of 12 mm square, 1.9 m") && refused.contains("the rack has 0"), "{refused}");
}

#[test]
fn the_handbook_works_the_bars_out_to_the_same_figures() {
    let page = fs::read_to_string(project().join("docs/handbook/cut-list.md")).unwrap();
    let list = beds().list();
    for bar in list.groups.iter().flat_map(|group| &group.bars) {
        let kept = if bar.is_kept { "kept" } else { "scrap" };
        let each = if bar.times > 1 { " each" } else { "" };
        let row = format!("| {}{each}, {kept} |", bar.offcut_nm as f64 / 1e6);
        assert!(page.contains(&row), "{row}");
    }
}

/// All words of some sheets.
fn words_of(drawing: &Drawing) -> Vec<String> {
    let items = drawing.pages.iter().flat_map(|page| &page.items);
    assert!(items.clone().all(Item::is_finite));
    items.filter_map(|item| if let Item::Text(text) = item { Some(text.content().to_owned()) } else { None }).collect()
}

#[test]
fn the_sheets_have_every_cut_every_box_what_to_buy_and_a_label_for_each_offcut() {
    let (beds, list) = (beds(), beds().list());
    for paper in Paper::ALL {
        let head = CutHead { title: &beds.job.title, customer: "the kitchen garden", date: "2026-04-12" };
        let sheets = cut_sheets(&list, head, paper);
        let words = words_of(&sheets);
        for total in ["298", "599", "900", "1201", "1502", "1803", "5454", "2285", "keep 543 mm", "keep 712 mm"] {
            assert!(words.iter().any(|word| word.trim_end_matches('.').ends_with(total)), "{total}: {words:?}");
        }
        assert!(words.iter().any(|word| word.contains("2 bars used, 1 bar to buy for EUR 6.84; less is impossible.")));
        assert!(words.iter().any(|word| word == "EUR 11.20"), "what is bought");
        assert!(words.iter().any(|word| word == "320 mm") && words.iter().any(|word| word == "LABELS FOR OFFCUTS"));
        assert!(words.iter().all(|word| !word.contains("100 %")), "nothing is at full scale");
        // A box to tick for each of the nine bars, and one for each line to buy.
        let boxes = sheets.pages.iter().flat_map(|page| &page.items);
        let boxes = boxes
            .filter(|item| matches!(item, Item::Polygon { fill: None, pen: Some(pen), .. } if pen.name() == "frame"));
        assert_eq!(boxes.count(), 9 + 2);
    }
}

#[test]
fn the_bars_are_drawn_to_one_scale() {
    let list = beds().list();
    let sheets = cut_sheets(&list, CutHead::default(), Paper::A4);
    let outlines = sheets.pages.iter().flat_map(|page| &page.items).filter_map(|item| match item {
        Item::Polygon { points, fill: None, pen: Some(pen) } if pen.name() == "outline" => {
            Some(points[2].x - points[0].x)
        }
        _ => None,
    });
    let drawn: Vec<f64> = outlines.collect();
    let lengths: Vec<f64> = list
        .groups
        .iter()
        .flat_map(|group| &group.bars)
        .map(|bar| list.sources[bar.source].length_nm as f64 / 1e6)
        .collect();
    assert_eq!(drawn.len(), lengths.len());
    let scale = drawn[0] / lengths[0];
    assert!(drawn.iter().zip(&lengths).all(|(drawn, length)| (drawn / length - scale).abs() < 1e-9));
}

#[test]
fn the_customer_sees_the_price_and_none_of_the_figures_behind_it() {
    let beds = beds();
    let order = beds.order();
    let quoted =
        quote(&beds.job, &order, beds.stock(), &fh_work::Shop::default(), &[1, 10], &|| true, &mut |_| ()).unwrap();
    let head = QuoteHead { job: &beds.job, order: &order, shop: &beds.shop, date: "2026-04-12" };
    let page = words_of(&customer_page(&quoted, head, Paper::A4));
    let asked = &quoted.counts[0].asked;
    for words in [quoted.money.words(asked.total), "QUOTE".to_owned(), "Not included".to_owned(), "30 days".to_owned()]
    {
        assert!(page.contains(&words), "{words}: {page:?}");
    }
    assert!(
        page.iter().any(|words| words.contains("not rated")) && page.iter().any(|words| words.contains("6 × hook"))
    );
    assert!(
        page.iter().all(|words| !words.contains("per hour") && !words.contains("profit") && !words.contains("heats"))
    );
    let own = words_of(&reckoning(&quoted, head, Paper::Letter)).join(" ");
    for line in quoted.counts.iter().flat_map(|one| &one.lines) {
        assert!(own.contains(&quoted.money.figures(line.amount)), "{}", line.what);
    }
    assert!(own.contains("local law") && own.contains("the likely figure is taken"));
}

#[test]
fn a_long_list_stays_on_its_pages() {
    let beds = beds();
    let mut order = beds.order();
    for (at, ordered) in order.iter_mut().enumerate() {
        ordered.plan.title = format!("{at} {}", "a name that nobody has room for ".repeat(30));
        ordered.plan.bars[0].name = "W".repeat(400);
        ordered.count = 60;
    }
    let list = make(&order, beds.stock(), &|| true, &mut |_| ()).unwrap();
    let title = "a job with a title that is far too long for any head of any page ".repeat(10);
    for paper in Paper::ALL {
        let sheets = cut_sheets(&list, CutHead { title: &title, customer: &title, date: &title }, paper);
        let (wide, high) = sheets.size_mm(&sheets.pages[0]);
        for text in sheets
            .pages
            .iter()
            .flat_map(|page| &page.items)
            .filter_map(|item| if let Item::Text(text) = item { Some(text) } else { None })
        {
            let level = text.turn == fh_print::drawing::Turn::Level;
            let (from, to) = if level {
                (text.at.x - text.lead_mm(), text.at.x - text.lead_mm() + text.width_mm())
            } else {
                (text.at.x, text.at.x)
            };
            assert!(
                from >= 5.0 && to <= wide - 5.0 && text.at.y <= high - 5.0,
                "{}: {from} to {to} of {wide}",
                text.content()
            );
        }
    }
}
