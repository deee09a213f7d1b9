//! A drawing as a file: SVG as it is, or a PNG of it.

use std::path::Path;
use std::sync::Arc;

use resvg::{tiny_skia, usvg};

use crate::fault::Fault;
use crate::files;

/// The letters of a PNG; their licence stands beside them.
const FONTS: [&[u8]; 2] = [
    include_bytes!("../fonts/LiberationSans-Regular.ttf"),
    include_bytes!("../fonts/LiberationSans-Bold.ttf"),
];

/// Pixels of a PNG for a millimetre of the sheet: 203 to the inch, fit to print.
const PIXELS_A_MM: f32 = 8.0;

/// What kind of file a drawing is written to.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Kind {
    Svg,
    Png,
}

impl Kind {
    /// The kind that a file's ending asks for.
    ///
    /// # Errors
    /// When it is neither.
    pub(crate) fn of(path: &Path) -> Result<Self, Fault> {
        let ending = path
            .extension()
            .map(|ending| ending.to_string_lossy().to_lowercase());
        match ending.as_deref() {
            Some("svg") => Ok(Self::Svg),
            Some("png") => Ok(Self::Png),
            _ => Err(Fault::of_command(format!(
                "`{}` doesn't say what kind of drawing is wanted",
                files::shown(path)
            ))
            .help("give a file that ends in `.svg` or `.png`")),
        }
    }

    /// The bytes to write.
    ///
    /// # Errors
    /// When the picture can't be made.
    pub(crate) fn bytes(self, svg: String) -> Result<Vec<u8>, Fault> {
        match self {
            Self::Svg => Ok(svg.into_bytes()),
            Self::Png => png(&svg),
        }
    }
}

fn png(svg: &str) -> Result<Vec<u8>, Fault> {
    let unmade = |why: String| {
        Fault::of_command(format!("the picture can't be made: {why}")).help("write an .svg instead")
    };
    let mut fonts = usvg::fontdb::Database::new();
    for font in FONTS {
        fonts.load_font_data(font.to_vec());
    }
    let options = usvg::Options {
        fontdb: Arc::new(fonts),
        // A unit of the sheet's viewBox is a millimetre.
        dpi: 25.4,
        font_family: "Liberation Sans".to_owned(),
        ..usvg::Options::default()
    };
    let tree = usvg::Tree::from_str(svg, &options).map_err(|error| unmade(error.to_string()))?;
    let size = tree
        .size()
        .to_int_size()
        .scale_by(PIXELS_A_MM)
        .ok_or_else(|| unmade("it has no size".to_owned()))?;
    let mut picture = tiny_skia::Pixmap::new(size.width(), size.height())
        .ok_or_else(|| unmade("it is too large".to_owned()))?;
    let scale = tiny_skia::Transform::from_scale(PIXELS_A_MM, PIXELS_A_MM);
    resvg::render(&tree, scale, &mut picture.as_mut());
    picture
        .encode_png()
        .map_err(|error| unmade(error.to_string()))
}
