//! Sentences of listings that bound nothing and that only a person can answer.

use super::super::seed::Seed;

pub const FLOOR: &[&str] = &[
    "The underside along the joint shall be free of laitance, dust and release agents.",
    "Honeycombed or broken concrete within the width of the lap shall be made good with a cementitious mortar before the packing is placed.",
    "Curing compounds shall be removed from the surfaces that the coating is to bond to.",
    "Anchors and inserts shall not pass through the joint.",
    "Where the edges of the joint are chipped, they shall be squared before the joint is measured.",
    "Penetrations beside the joint shall be sealed by a system of their own.",
];
pub const DECK: &[&str] = &[
    "Side laps of the units shall not fall over the wall.",
    "The units shall be welded or fastened to the supports as their own design describes.",
    "Oil from rolling shall be wiped off where the coating is to bond.",
];
pub const BEAM: &[&str] = &[
    "The beam shall be free of paint, oil and loose scale where it is sprayed.",
    "The flanges shall stand level across the wall.",
];
pub const FIREPROOFING: &[&str] = &[
    "Fireproofing that was knocked off while the runner was placed shall be made good with the same material before the packing is placed.",
    "The face that the coating laps onto shall be sealed as the maker of the coating describes.",
    "Overspray on the runner legs shall be scraped off before the studs are placed.",
];
pub const WALL: &[&str] = &[
    "The wall shall be built in the manner described in its own wall design in the Directory.",
    "The rating of the joint is that of the wall or of the floor, whichever is the lower.",
    "Openings in the wall shall be framed so that no load comes upon the joint.",
    "Outlets and ducts in the wall shall be kept clear of the joint and shall be protected as their own listings describe.",
    "Where the wall changes direction, the joint shall be carried round the corner without a break.",
];
pub const RUNNER: &[&str] = &[
    "Runners shall be butted at corners and not lapped.",
    "The runner shall not be fastened through the board.",
    "Shims shall not be placed between the runner and the structure.",
    "The runner shall follow the line of the wall below and shall be plumb above it.",
];
pub const STUD: &[&str] = &[
    "Studs shall stand loose in the ceiling runner so that they can slide.",
    "Studs beside openings shall be doubled as the wall design describes.",
    "Studs shall be cut square and shall not rest on the fasteners of the floor runner.",
];
pub const BOARD: &[&str] = &[
    "The board shall not be fastened to the ceiling runner.",
    "Joints of the board shall be taped and finished as the wall design describes.",
    "Cut edges at the joint shall be straight, sound and free of loose paper.",
    "The inner and the outer layer shall not be joined along the same stud.",
    "Board that is wet, bent or broken at the joint shall be exchanged.",
];
pub const JOINT: &[&str] = &[
    "The width shall be measured when the joint is made and before the structure is loaded.",
    "The joint shall be inspected before it is concealed.",
    "Where the joint meets another in a different plane, packing and coating shall be carried round without a break.",
    "Finishes that bridge the joint shall be able to follow its movement.",
    "The joint shall be clean and dry before anything is placed in it.",
    "Work on one side shall be finished before the other side is closed.",
];
pub const PACKING: &[&str] = &[
    "The packing shall be cut clean and left without voids.",
    "Torn, wet or oily packing shall be thrown away.",
    "The fibers shall run parallel to the faces of the joint.",
    "Butted ends shall be pressed tightly together.",
    "The packing shall be pressed in from one side only where the other can't be reached.",
    "It shall be cut wider than the joint so that it stays where it is pressed.",
    "Offcuts shall not be pieced together.",
];
pub const FILL: &[&str] = &[
    "Surfaces that it laps onto shall be sound, dry and free of dust.",
    "Work shall stop where the surfaces are wet or frozen.",
    "Pinholes and cracks that show when it has dried shall be gone over again.",
    "It shall be stirred before use and shall not be thinned.",
    "Adjoining surfaces shall be masked, and the masking taken off before it sets.",
    "The edges shall be feathered out.",
    "Containers that have been frozen or that are past their date shall not be used.",
    "Its film shall be checked while it is wet and shall be made good at once where it is thin.",
    "Paint may be applied over it once it has dried through.",
];
pub const STEEL: &[&str] = &[
    "Ends shall be butted and not lapped.",
    "Cut edges shall be free of burrs.",
    "It shall be set in place before the packing.",
    "It shall not hinder the movement of the joint.",
];

pub const FASTENER: &[&str] = &[
    "Fasteners shall be driven square to the surface.",
    "A fastener that has broken out shall be exchanged for another beside it.",
    "Fasteners in hollow units shall be those that the maker of the units names.",
];
pub const GENERAL: &[&str] = &[
    "This sheet is valid for the construction that is described and for no other.",
    "Materials that bear the mark of the Directory shall be used where an item is so marked.",
    "Substitutions are not covered unless the proving house has agreed to them in writing.",
    "The joint shall be installed by people whom the maker of the fill has instructed.",
    "Materials shall be delivered in their own packages, unopened and with legible labels.",
    "The system does not cover joints that are exposed to weather or to standing water.",
    "Drawings on this sheet are not to scale, and figures govern over them.",
    "Where local codes ask for more, local codes govern.",
    "Repairs shall be made with the same materials and to the same thickness.",
    "The owner shall be told that whatever is later fixed through the joint breaks its rating.",
    "Dust from cutting shall be kept out of the lungs, and work overhead shall be done from a firm stand.",
    "Old sprayed fireproofing shall be tested for asbestos before it is disturbed.",
];

/// Some of the sentences, so many in a hundred, each once.
pub fn some(seed: &mut Seed, of: &[&'static str], of_hundred: usize) -> Vec<&'static str> {
    of.iter()
        .copied()
        .filter(|_| seed.percent(of_hundred))
        .collect()
}
