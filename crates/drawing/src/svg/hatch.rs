//! How materials are drawn in section.
//!
//! ISO 128-3:2020 (before it ISO 128-50:2001) gives the manner: even hatching at 45°, thin sections filled. Which pattern stands for
//! which building material it leaves to the trade; these are the usual ones of architectural drafting, from memory: dots and triangles
//! for concrete, crossed lines for block, pairs of lines for steel, a fine stipple for gypsum board, waves for mineral wool.

use crate::section::Material;

/// The name of a material's pattern.
pub(super) const fn name(material: Material) -> &'static str {
    match material {
        Material::Concrete => "concrete",
        Material::Masonry => "masonry",
        Material::RolledSteel => "rolled-steel",
        Material::SheetSteel => "sheet-steel",
        Material::Gypsum => "gypsum",
        Material::WoolLevel => "wool-level",
        Material::WoolUpright => "wool-upright",
        Material::Wool => "wool",
        Material::Sprayed => "sprayed",
        Material::Coating => "coating",
        Material::Sealant => "sealant",
        Material::Foam => "foam",
        Material::Gap => "gap",
    }
}

/// The side of a material's tile in millimetres and what stands in it; none for a plain colour.
pub(super) const fn tile(material: Material) -> Option<(&'static str, &'static str)> {
    Some(match material {
        Material::Concrete => (
            "14",
            r#"<path d="M2.1 3.4l1.3.5-1 .9zM9.2 1.6l.9 1.1-1.4.2zM6.1 8.3l1.4.1-.8 1.1zM11.6 10.6l.3 1.3-1.2-.4zM1.9 11.4l1-.9.4 1.3z" fill="none" stroke="black" stroke-width=".13"/><path d="M5 1.2h0M7.2 4.6h0M12.1 5.1h0M.8 7.4h0M3.9 7h0M9.9 7.2h0M4.6 12.4h0M8.4 12h0M13.2 13h0M12.8 2h0M6.1 5.9h0M10.3 4.4h0M2.6 9.2h0M13 8.3h0" fill="none" stroke="black" stroke-width=".3" stroke-linecap="round"/>"#,
        ),
        Material::Masonry => (
            "2.4",
            r#"<path d="M0 2.4L2.4 0M-.6.6L.6-.6M1.8 3L3 1.8M0 0L2.4 2.4M-.6 1.8L.6 3M1.8-.6L3 .6" fill="none" stroke="black" stroke-width=".13"/>"#,
        ),
        Material::RolledSteel => (
            "2.8",
            r#"<path d="M0 2.8L2.8 0M-.7.7L.7-.7M2.1 3.5L3.5 2.1M0 2L2 0M.8 3.6L3.6.8M-.7-.1L-.1-.7" fill="none" stroke="black" stroke-width=".15"/>"#,
        ),
        Material::Gypsum => (
            "3",
            r#"<path d="M.5.6h0M1.9.4h0M2.6 1.5h0M1.1 1.6h0M.4 2.6h0M2 2.5h0" fill="none" stroke="black" stroke-width=".2" stroke-linecap="round"/>"#,
        ),
        Material::WoolLevel => (
            "3.2",
            r#"<path d="M0 .5q.4-.4.8 0t.8 0 .8 0 .8 0M0 1.57q.4.4.8 0t.8 0 .8 0 .8 0M0 2.63q.4-.4.8 0t.8 0 .8 0 .8 0" fill="none" stroke="black" stroke-width=".15"/>"#,
        ),
        Material::WoolUpright => (
            "3.2",
            r#"<path d="M.5 0q-.4.4 0 .8t0 .8 0 .8 0 .8M1.57 0q.4.4 0 .8t0 .8 0 .8 0 .8M2.63 0q-.4.4 0 .8t0 .8 0 .8 0 .8" fill="none" stroke="black" stroke-width=".15"/>"#,
        ),
        Material::Wool => (
            "3",
            r#"<path d="M.2.9c.6-1 1.2-.6.8.1s-.9.3-.3-.3M1.7 2.4c.6-1 1.2-.6.8.1s-.9.3-.3-.3M1.9.7c.5-.5.8-.2.6.2M.4 2.5c.5-.5.8-.2.6.2" fill="none" stroke="black" stroke-width=".15"/>"#,
        ),
        Material::Sprayed => (
            "2.6",
            r#"<path d="M.3.4l.5.3M1.6.3l.3.5M2.2 1.3l-.5.3M.9 1.2l-.1.5M.3 2.1l.5-.2M1.5 2.2l.5.1" fill="none" stroke="black" stroke-width=".17"/><path d="M1.2.8h0M2.2.6h0M.3 1.4h0M1.3 1.8h0M2.2 2h0M.9 2.4h0" fill="none" stroke="black" stroke-width=".2" stroke-linecap="round"/>"#,
        ),
        Material::Sealant => (
            ".9",
            r#"<path d="M0 0h.9v.9H0z" fill="silver"/><path d="M0 0L.9.9M-.2.7L.2 1.1M.7-.2L1.1.2" fill="none" stroke="black" stroke-width=".18"/>"#,
        ),
        Material::Foam => (
            "1.8",
            r#"<circle cx=".5" cy=".5" r=".36" fill="none" stroke="black" stroke-width=".13"/><circle cx="1.4" cy="1.35" r=".36" fill="none" stroke="black" stroke-width=".13"/>"#,
        ),
        Material::Coating | Material::SheetSteel | Material::Gap => return None,
    })
}

/// The plain colour of a material that has no pattern.
pub(super) const fn colour(material: Material) -> &'static str {
    match material {
        Material::SheetSteel => "#000",
        Material::Coating => "#8a8a8a",
        _ => "#fff",
    }
}
