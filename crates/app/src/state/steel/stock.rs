//! The smith's own files: the rack, the merchant's list, the shop's figures. Each change of the rack is saved at once, and made
//! on what lies on the disk then, so that nothing is lost that another program wrote meanwhile.

use fh_rack::kept::merchant::{self, Merchant};
use fh_rack::kept::rack::{self, Rack};
use fh_rack::kept::shop::{self, Shop};
use fh_store::document::{self, Sort};
use fh_store::{Home, Stamp};
use std::error::Error;

const RACK: Sort<Rack> = Sort { read: rack::read, write: rack::write, instead: Rack::default };
const SHOP: Sort<Shop> = Sort { read: shop::read, write: shop::write, instead: Shop::common };
/// How often the disk is looked at, in seconds.
const LOOK: f64 = 1.0;
/// The most changes of the rack that can be taken back.
const MOST_STEPS: usize = 100;

/// A change of the rack that can be taken back.
struct Step {
    before: Rack,
    after: Rack,
}

/// What can be had, and what work costs.
pub(crate) struct Stocked {
    home: Option<Home>,
    pub(crate) rack: Rack,
    pub(crate) merchant: Merchant,
    pub(crate) shop: Shop,
    /// What the rack's file looked like when it was read.
    stamp: Option<Stamp>,
    /// Why the rack cannot be read; it is not changed then.
    pub(crate) broken: Option<String>,
    /// What else could not be read, each a sentence.
    pub(crate) told: Vec<String>,
    steps: Vec<Step>,
    /// A number that changes with the rack, the merchant's list or the shop's figures.
    pub(crate) revision: u64,
    looked: f64,
}

impl Stocked {
    /// Reads all three.
    pub(crate) fn read(home: Option<&Home>) -> Self {
        let mut told = Vec::new();
        let merchant = home.map_or_else(
            || Ok(Merchant::common()),
            |home| document::load_or(&home.merchant_file(), merchant::read, Merchant::common).map(|read| read.value),
        );
        let merchant = merchant.unwrap_or_else(|error| {
            told.push(format!("The merchant's list was not read: {error}"));
            Merchant::common()
        });
        let shop = home.map_or_else(
            || Ok(Shop::common()),
            |home| document::load_or(&home.shop_file(), shop::read, Shop::common).map(|read| read.value),
        );
        let shop = shop.unwrap_or_else(|error| {
            told.push(format!("The shop's figures were not read: {error}"));
            Shop::common()
        });
        let mut all = Self {
            home: home.cloned(),
            rack: Rack::default(),
            merchant,
            shop,
            stamp: None,
            broken: None,
            told,
            steps: Vec::new(),
            revision: 0,
            looked: 0.0,
        };
        all.read_rack();
        all
    }

    fn read_rack(&mut self) {
        let Some(home) = &self.home else { return };
        match document::load_or(&home.rack_file(), rack::read, Rack::default) {
            Ok(read) => {
                self.broken = None;
                self.stamp = read.stamp;
                if read.value != self.rack {
                    self.rack = read.value;
                    self.revision += 1;
                }
            }
            Err(error) => self.broken = Some(error.to_string()),
        }
    }

    /// Reads the rack again where somebody else changed its file; whether it is another one now.
    pub(crate) fn look(&mut self, now: f64) -> bool {
        let Some(home) = self.home.as_ref().filter(|_| now - self.looked >= LOOK) else { return false };
        self.looked = now;
        let path = home.rack_file();
        let is_same = match &self.stamp {
            Some(stamp) => stamp.looks_unchanged(&path),
            None => self.broken.is_none() && !path.exists(),
        };
        let before = self.revision;
        if !is_same {
            self.read_rack();
        }
        self.revision != before
    }

    /// Changes the rack and saves it.
    ///
    /// # Errors
    /// Where the change is refused, or the file cannot be read or written; the rack is then as it was.
    pub(crate) fn change(&mut self, change: impl FnOnce(&Rack) -> Result<Rack, String>) -> Result<(), String> {
        let checked = |held: &Rack| -> Result<(Rack, Step), Box<dyn Error>> {
            let after = change(held)?;
            // What is written can be read again, or it is not written.
            let after = rack::read(rack::write(&after).as_bytes())?;
            Ok((after.clone(), Step { before: held.clone(), after }))
        };
        let step = match &self.home {
            Some(home) => document::change(&home.rack_file(), RACK, checked),
            None => checked(&self.rack).map(|(_, step)| step),
        };
        let step = step.map_err(|error| error.to_string())?;
        self.rack = step.after.clone();
        self.revision += 1;
        self.read_rack();
        if self.steps.len() == MOST_STEPS {
            self.steps.remove(0);
        }
        self.steps.push(step);
        Ok(())
    }

    /// Whether a change can be taken back.
    pub(crate) fn can_undo(&self) -> bool {
        self.steps.last().is_some_and(|step| step.after == self.rack)
    }

    /// Takes the last change of this window back.
    ///
    /// # Errors
    /// Where the rack was changed elsewhere since, or cannot be written.
    pub(crate) fn undo(&mut self) -> Result<(), String> {
        let Some(step) = self.steps.pop() else { return Ok(()) };
        let Step { before, after } = step;
        let kept = std::mem::take(&mut self.steps);
        let done = self.change(|held| {
            if *held == after { Ok(before) } else { Err("the rack was changed elsewhere since then".to_owned()) }
        });
        self.steps = kept;
        done
    }

    /// Takes other figures of the shop; they are saved where they are to be kept.
    ///
    /// # Errors
    /// Where they make no sense, or cannot be written.
    pub(crate) fn set_shop(&mut self, shop: Shop, keep: bool) -> Result<(), String> {
        let shop = shop::read(shop::write(&shop).as_bytes()).map_err(|error| error.to_string())?;
        if let Some(home) = self.home.as_ref().filter(|_| keep) {
            let next = shop.clone();
            let change = |_: &Shop| Ok::<_, Box<dyn Error>>((next, ()));
            document::change(&home.shop_file(), SHOP, change).map_err(|error| error.to_string())?;
        }
        self.shop = shop;
        self.revision += 1;
        Ok(())
    }
}
