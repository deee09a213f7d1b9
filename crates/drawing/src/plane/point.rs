/// A point: millimetres to the right and downwards.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Point {
    /// To the right.
    pub x: f64,
    /// Downwards.
    pub y: f64,
}

/// A point.
pub(crate) const fn pt(x: f64, y: f64) -> Point {
    Point { x, y }
}

impl Point {
    /// How far another point lies.
    pub fn distance(self, other: Self) -> f64 {
        let (x, y) = (other.x - self.x, other.y - self.y);
        (x * x + y * y).sqrt()
    }

    /// The point a share of the way to another.
    pub(crate) fn towards(self, other: Self, share: f64) -> Self {
        pt(
            self.x + (other.x - self.x) * share,
            self.y + (other.y - self.y) * share,
        )
    }

    /// The same point seen in the y axis as in a mirror.
    pub(crate) fn mirrored(self) -> Self {
        pt(-self.x, self.y)
    }
}

/// A rectangle along the axes.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Box2 {
    /// Its least x and y.
    pub min: Point,
    /// Its greatest x and y.
    pub max: Point,
}

impl Box2 {
    /// From two opposite corners, in any order.
    pub fn of(one: Point, other: Point) -> Self {
        Self {
            min: pt(one.x.min(other.x), one.y.min(other.y)),
            max: pt(one.x.max(other.x), one.y.max(other.y)),
        }
    }

    /// The smallest that holds all points; none when there are none.
    pub fn around(points: impl IntoIterator<Item = Point>) -> Option<Self> {
        let mut points = points.into_iter();
        let first = points.next()?;
        Some(points.fold(Self::of(first, first), Self::with))
    }

    /// The smallest that holds this and a point.
    #[must_use]
    pub fn with(self, point: Point) -> Self {
        Self {
            min: pt(self.min.x.min(point.x), self.min.y.min(point.y)),
            max: pt(self.max.x.max(point.x), self.max.y.max(point.y)),
        }
    }

    /// The same with so much more on every side.
    #[must_use]
    pub fn grown(self, by: f64) -> Self {
        Self {
            min: pt(self.min.x - by, self.min.y - by),
            max: pt(self.max.x + by, self.max.y + by),
        }
    }

    /// Its width.
    pub fn width(self) -> f64 {
        self.max.x - self.min.x
    }

    /// Its height.
    pub fn height(self) -> f64 {
        self.max.y - self.min.y
    }

    /// Whether two share more than an edge.
    pub fn overlaps(self, other: Self) -> bool {
        self.min.x < other.max.x
            && other.min.x < self.max.x
            && self.min.y < other.max.y
            && other.min.y < self.max.y
    }

    /// Whether another lies within this one.
    pub fn holds(self, other: Self) -> bool {
        self.min.x <= other.min.x
            && other.max.x <= self.max.x
            && self.min.y <= other.min.y
            && other.max.y <= self.max.y
    }

    /// Whether a straight line from one point to another passes through its inside.
    pub fn is_crossed_by(self, from: Point, to: Point) -> bool {
        // Liang and Barsky's clipping: the stretch of the line that lies between all four sides.
        let (dx, dy) = (to.x - from.x, to.y - from.y);
        let mut stretch = (0.0_f64, 1.0_f64);
        for (step, room) in [
            (-dx, from.x - self.min.x),
            (dx, self.max.x - from.x),
            (-dy, from.y - self.min.y),
            (dy, self.max.y - from.y),
        ] {
            if step == 0.0 {
                if room <= 0.0 {
                    return false;
                }
            } else if step < 0.0 {
                stretch.0 = stretch.0.max(room / step);
            } else {
                stretch.1 = stretch.1.min(room / step);
            }
        }
        stretch.1 - stretch.0 > 1e-9
    }
}
