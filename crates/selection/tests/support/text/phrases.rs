//! How each property is worded: a label, a phrase that stands in a list, and one that follows "shall".

/// The words of one property; `{}` is its bound.
#[derive(Debug, Clone, Copy)]
pub struct Phrase {
    pub label: &'static str,
    pub in_list: &'static str,
    pub shall: &'static str,
}

/// Property, label, in a list, after "shall".
type Row = (&'static str, &'static str, &'static str, &'static str);

#[rustfmt::skip]
const PHRASES: &[Row] = &[
    ("concrete.thickness", "Thickness of concrete", "{} thick", "be {} thick"),
    ("concrete.density", "Density of concrete", "density {}", "have a density of {}"),
    ("deck.depth", "Depth of deck", "{} deep", "be {} deep"),
    ("deck.gauge", "Gauge of deck", "{}", "be of steel {}"),
    ("deck.flute_spacing", "Flute spacing", "flutes spaced {} o.c.", "have flutes spaced {} on center"),
    ("beam.weight", "Weight of beam", "weighing {}", "weigh {}"),
    ("beam.depth", "Depth of beam", "{} deep", "be {} deep"),
    ("beam.flange_width", "Flange width", "with flanges {} wide", "have flanges {} wide"),
    ("fireproofing.density", "Density of fireproofing", "density {}", "have a density of {}"),
    ("fireproofing.thickness", "Thickness of fireproofing", "{} thick", "be {} thick"),
    ("runner.gauge", "Gauge of runner", "{}", "be of galvanized steel {}"),
    ("runner.leg_length", "Leg length of runner", "with legs {} long", "have legs {} long"),
    ("runner.slot_length", "Slot length", "slots {} long", "have slots {} long"),
    ("runner.fastener_spacing", "Runner fastener spacing", "fastened {} o.c.", "be fastened {} on center"),
    ("fastener.embedment", "Embedment", "embedment {}", "have an embedment of {}"),
    ("fastener.length", "Fastener length", "{} long", "be {} long"),
    ("fastener.end_distance", "First fastener", "the first fastener {} from each end", "have the first one {} from each end"),
    ("stud.width", "Stud width", "{} wide", "be {} wide"),
    ("stud.gauge", "Stud gauge", "{}", "be of galvanized steel {}"),
    ("stud.spacing", "Stud spacing", "spaced {} o.c.", "be spaced {} on center"),
    ("stud.flange_width", "Stud flanges", "with flanges {} wide", "have flanges {} wide"),
    ("stud.end_gap", "Stud end gap", "cut {} short of the ceiling runner", "be cut {} short of the ceiling runner"),
    ("board.thickness", "Board thickness", "{} thick", "be {} thick"),
    ("board.screw_spacing", "Board screw spacing", "screws spaced {} o.c.", "have its screws spaced {} on center"),
    ("board.joint_offset", "Board joint offset", "joints offset {} between layers", "have its joints offset {} between layers"),
    ("board.gap", "Gap at the top of the board", "gap at the top of the board {}", "leave a gap of {} at its top"),
    ("board.top_screw_distance", "Uppermost screws", "uppermost screws {} below the floor above", "have its uppermost screws {} below the floor above"),
    ("board.layers", "Layers of board", "{} layers", "consist of {} layers"),
    ("joint.width", "Width of joint", "width {}", "be {} wide"),
    ("joint.movement_compression", "Movement in compression", "compression {}", "accommodate a compression of {}"),
    ("joint.movement_extension", "Movement in extension", "extension {}", "accommodate an extension of {}"),
    ("packing.density", "Packing density", "{} density", "have a density of {}"),
    ("packing.compression", "Packing compression", "compressed {}", "be compressed {}"),
    ("packing.depth", "Packing depth", "installed to a depth of {}", "be installed to a depth of {}"),
    ("packing.recess", "Packing recess", "recessed {} from the face", "be recessed {} from the face"),
    ("packing.splice_spacing", "Packing seam spacing", "seams spaced {} apart", "have its seams spaced {} apart"),
    ("clip.gauge", "Clip gauge", "{}", "be of galvanized steel {}"),
    ("clip.width", "Clip width", "{} wide", "be {} wide"),
    ("clip.overlap", "Clip overlap", "overlapping the edge {}", "overlap the edge by {}"),
    ("clip.spacing", "Clip spacing", "spaced {} o.c.", "be spaced {} on center"),
    ("coating.wet_thickness", "Coating wet thickness", "{} wet thickness", "be applied to a wet thickness of {}"),
    ("coating.dry_thickness", "Coating dry thickness", "{} dry thickness", "have a dry thickness of {}"),
    ("coating.coats", "Coats", "applied in {} coats", "be applied in {} coats"),
    ("coating.overlap_board", "Lap onto board", "lapped {} onto the gypsum board", "be lapped {} onto the gypsum board"),
    ("coating.overlap_concrete", "Lap onto concrete", "lapped {} onto the concrete", "be lapped {} onto the concrete"),
    ("coating.overlap_deck", "Lap onto deck", "lapped {} onto the steel deck", "be lapped {} onto the steel deck"),
    ("coating.overlap_fireproofing", "Lap onto fireproofing", "lapped {} onto the fireproofing", "be lapped {} onto the fireproofing"),
    ("coating.application_temperature", "Application temperature", "applied at a temperature of {}", "be applied at a temperature of {}"),
    ("coating.cure_time", "Cure time", "allowed to cure for {}", "be allowed to cure for {}"),
    ("packing.splice_stagger", "Packing seam stagger", "seams staggered {} between layers", "have its seams staggered {} between layers"),
    ("strip.gauge", "Strip gauge", "{}", "be of galvanized steel {}"),
    ("strip.width", "Strip width", "{} wide", "be {} wide"),
    ("strip.overlap", "Strip overlap", "overlapping each side of the joint {}", "overlap each side of the joint by {}"),
    ("strip.spacing", "Strip spacing", "spaced {} o.c.", "be spaced {} on center"),
    ("sealant.depth", "Sealant depth", "installed to a depth of {}", "be installed to a depth of {}"),
    ("angle.gauge", "Angle gauge", "{}", "be of galvanized steel {}"),
    ("angle.leg_length", "Angle leg length", "with legs {} long", "have legs {} long"),
    ("angle.fastener_spacing", "Angle fastener spacing", "fastened {} o.c.", "be fastened {} on center"),
];

/// The words of a property.
pub fn phrase(property: &str) -> Phrase {
    let row = PHRASES.iter().find(|row| row.0 == property);
    let (_, label, in_list, shall) = *row.unwrap_or_else(|| panic!("no words for {property}"));
    Phrase {
        label,
        in_list,
        shall,
    }
}

/// The phrase with its bound.
pub fn filled(phrase: &str, bound: &str) -> String {
    phrase.replacen("{}", bound, 1)
}
