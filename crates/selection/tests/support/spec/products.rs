//! Invented makers and products.

use super::super::seed::Seed;

/// A product with its maker.
pub type Product = (&'static str, &'static str);

pub const PACKINGS: &[Product] = &[
    ("Vostrika Fibre Works", "Vostmat 40"),
    ("Vostrika Fibre Works", "Vostmat 60"),
    ("Ulmeregg Mineral Fibre", "Ulmerpad 4"),
    ("Ulmeregg Mineral Fibre", "Ulmerpad 6"),
    ("Tarrowfen Wools", "Tarrowbatt 4"),
    ("Tarrowfen Wools", "Tarrowbatt 8"),
];
pub const COATINGS: &[Product] = &[
    ("Sevrandel Coatings", "Sevraspray 20"),
    ("Sevrandel Coatings", "Sevraspray 20 LT"),
    ("Zelmarrick Sealants", "Zelmaspray J"),
    ("Quillbrook Seals", "Quillcoat S"),
    ("Quillbrook Seals", "Quillcoat W"),
];
pub const SEALANTS: &[Product] = &[
    ("Zelmarrick Sealants", "Zelmaseal 300"),
    ("Zelmarrick Sealants", "Zelmaseal 300 SL"),
    ("Quillbrook Seals", "Quillflex"),
    ("Sevrandel Coatings", "Sevraseal FR"),
];
pub const BOARDS: &[Product] = &[
    ("Ivrandine Board Company", "Ivraboard X"),
    ("Ivrandine Board Company", "Ivraboard XC"),
    ("Maddoran Gypsum", "Maddorock 58"),
];
pub const FIREPROOFINGS: &[Product] = &[
    ("Ghelderoy Fireproofing", "Gheldercoat 15 HY"),
    ("Ghelderoy Fireproofing", "Gheldercoat 22"),
    ("Palmarrin Coatings", "Palmarcoat M"),
];
pub const RUNNERS: &[Product] = &[
    ("Kvillstrom Framing", "Kvillslot 250"),
    ("Kvillstrom Framing", "Kvillslot 362"),
    ("Dorrevik Sections", "Dorretrack SL"),
];

/// Some of the products, one at least.
pub fn some(seed: &mut Seed, of: &[Product]) -> Vec<Product> {
    let mut chosen: Vec<Product> = of.iter().copied().filter(|_| seed.percent(40)).collect();
    if chosen.is_empty() {
        chosen.push(seed.one(of));
    }
    chosen
}

/// Products with one maker's together.
pub fn by_maker(products: &[Product]) -> Vec<(&'static str, Vec<&'static str>)> {
    let mut makers: Vec<(&str, Vec<&str>)> = Vec::new();
    for (maker, product) in products {
        match makers.iter_mut().find(|known| known.0 == *maker) {
            Some(known) => known.1.push(product),
            None => makers.push((maker, vec![product])),
        }
    }
    makers
}
