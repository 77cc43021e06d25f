//! The smith's own files: the rack, the merchant's list, the shop's figures. Each change is saved at once, and made on what lies
//! on the disk then.

use super::held::Held;
use fh_rack::kept::merchant::{self, Merchant};
use fh_rack::kept::rack::{self, Rack};
use fh_rack::kept::shop::{self, Shop};
use fh_store::Home;
use fh_store::document::Sort;

const RACK: Sort<Rack> = Sort { read: rack::read, write: rack::write, instead: Rack::default };
const MERCHANT: Sort<Merchant> = Sort { read: merchant::read, write: merchant::write, instead: Merchant::common };
const SHOP: Sort<Shop> = Sort { read: shop::read, write: shop::write, instead: Shop::common };
/// How often the disk is looked at, in seconds.
const LOOK: f64 = 1.0;

/// What can be had, and what work costs.
pub(crate) struct Stocked {
    pub(crate) rack: Held<Rack>,
    pub(crate) merchant: Held<Merchant>,
    pub(crate) shop: Held<Shop>,
    /// A number that changes with any of them.
    pub(crate) revision: u64,
    looked: f64,
}

impl Stocked {
    /// Reads all three.
    pub(crate) fn read(home: Option<&Home>) -> Self {
        Self {
            rack: Held::read(home.map(Home::rack_file), RACK),
            merchant: Held::read(home.map(Home::merchant_file), MERCHANT),
            shop: Held::read(home.map(Home::shop_file), SHOP),
            revision: 1,
            looked: 0.0,
        }
    }

    /// What of them cannot be read beside the rack, each a sentence: what comes with the program stands in its place.
    pub(crate) fn told(&self) -> Vec<String> {
        let told = |what: &str, why: &Option<String>| {
            why.as_ref().map(|why| format!("{what} cannot be read, and is left as it is: {why}"))
        };
        let all = [
            told("The merchant's list", &self.merchant.broken),
            told("The file of the shop's figures", &self.shop.broken),
        ];
        all.into_iter().flatten().collect()
    }

    /// Reads again what somebody else changed; what that was, in words.
    pub(crate) fn look(&mut self, now: f64) -> Option<&'static str> {
        if now - self.looked < LOOK {
            return None;
        }
        self.looked = now;
        let news = [
            (self.rack.look(), "The rack was changed elsewhere, and read again."),
            (self.merchant.look(), "The merchant's list was changed elsewhere, and read again."),
            (self.shop.look(), "The shop's figures were changed elsewhere, and read again."),
        ];
        let told = news.into_iter().find(|(is_news, _)| *is_news).map(|(_, words)| words);
        self.revision += u64::from(told.is_some());
        told
    }

    /// Changes the rack and saves it.
    ///
    /// # Errors
    /// Where the change is refused, or the file cannot be read or written; the rack is then as it was.
    pub(crate) fn change_rack(&mut self, change: impl FnOnce(&Rack) -> Result<Rack, String>) -> Result<(), String> {
        self.revision += 1;
        self.rack.change(change)
    }

    /// Takes another merchant's list, and keeps it.
    ///
    /// # Errors
    /// Where it makes no sense, was changed elsewhere, or cannot be written.
    pub(crate) fn set_merchant(&mut self, merchant: &Merchant) -> Result<(), String> {
        self.revision += 1;
        self.merchant.put(merchant)
    }

    /// Takes other figures of the shop; they are saved where they are to be kept.
    ///
    /// # Errors
    /// Where they make no sense, were changed elsewhere, or cannot be written.
    pub(crate) fn set_shop(&mut self, shop: &Shop, keep: bool) -> Result<(), String> {
        self.revision += 1;
        if keep { self.shop.put(shop) } else { self.shop.lay(shop) }
    }
}
