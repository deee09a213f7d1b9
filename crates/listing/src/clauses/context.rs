//! What a number of a sentence becomes: its name, its words, its condition, and the clause of them.

use measure::{Agreement, Dimension, Unit};
use vocabulary::vocabulary;

use super::Around;
use super::bounds::{Reading, list_end};
use super::classes::ClassNumber;
use super::draft::{Draft, Yield, local_property};
use super::leftover::{Role, Segment};
use super::told::{NOT_DECIDED, told};
use crate::conditions::{Attached, Found, Permitted, is_said_of_all};
use crate::model::{Condition, Confidence, Expr, Requirement, Span};
use crate::naming::{Mention, Name, Subject, is_of_what_is_behind, name};
use crate::phrase::Amount;
use crate::rules::{Sentence, case_of, is_spaced};

/// A sentence with what governs it and what stands around it.
pub(super) struct Context<'a, 'b> {
    pub(super) sentence: &'b Sentence<'a>,
    pub(super) around: &'b Around,
    pub(super) governing: &'b [Found],
    /// The index from which the governing words are configurations.
    pub(super) first_configuration: usize,
    /// The numbers that a permission is confined to.
    pub(super) permitted: &'b [Permitted],
    pub(super) attached: &'b [Attached],
}

impl Context<'_, '_> {
    /// What a number bounds. The thickness beside a gauge is that of the same sheet; a number that only a condition parts from the
    /// one before bounds the same ("4 in. for 1 h, 5 in. for 2 h").
    pub(super) fn name(
        &self,
        reading: &Reading,
        before: Option<(&Reading, &Name)>,
        subject: &Subject,
        mentions: &[Mention],
    ) -> Name {
        // What a list counts stands after its last number.
        let index = list_end(self.sentence, reading.amounts.first().copied().unwrap_or(0));
        if let Some((earlier, held)) = before {
            if reading.rule == "same sheet"
                && let Some(sheet) = same_sheet(held, reading.bound.unit.dimension())
            {
                return sheet;
            }
            if self.limits_the_share(earlier, reading) {
                return held.clone();
            }
            let alike = earlier.bound.unit.dimension() == reading.bound.unit.dimension();
            let said_alike = case_of(self.sentence, index).is_some()
                || reading.rule == "parallel place" && !self.measures_its_own(reading)
                || reading.rule == "parallel case" && self.has_its_own_case(reading)
                || self.repeats_the_count(earlier, reading);
            let other = || {
                is_of_what_is_behind(self.sentence, index, held, subject)
                    || self.measures_another(index, held)
            };
            if alike && (said_alike || self.only_conditions_between(earlier, reading)) && !other() {
                return held.clone();
            }
        }
        name(self.sentence, index, subject, mentions)
    }

    /// Whether a length only limits the share of the joint's width before it: "half the joint width *but not less than 10 mm*".
    fn limits_the_share(&self, earlier: &Reading, later: &Reading) -> bool {
        const LIMITING: &[&str] = &[
            "but",
            "and",
            "or",
            "with",
            "a",
            "not",
            "never",
            "no",
            "less",
            "more",
            "than",
            "under",
            "over",
            "below",
            "above",
            "min",
            "minimum",
            "max",
            "maximum",
            "at",
            "least",
            "most",
            "of",
            "to",
            "exceed",
            "exceeding",
            "in",
            "any",
            "case",
        ];
        let amount = |reading: &Reading| {
            let last = reading.amounts.last();
            last.and_then(|index| self.sentence.amount(*index))
        };
        let (Some(first), Some(own)) = (amount(earlier), amount(later)) else {
            return false;
        };
        let between = first.last..own.first;
        let begins = between
            .clone()
            .find(|at| !self.sentence.is_sign(*at, ','))
            .is_some_and(|at| {
                let joined = ["but", "and", "or", "with", "not", "never"];
                self.sentence.is_any(at, &joined)
            });
        let limits = begins
            && between
                .clone()
                .all(|at| self.sentence.is_sign(at, ',') || self.sentence.is_any(at, LIMITING));
        let behind = self.sentence.skip_parentheses(own.last);
        let closes = self.sentence.token(behind).is_none()
            || self.sentence.is_stop(behind)
            || self.sentence.is_sign(behind, '.');
        earlier.bound.unit == Unit::TimesJointWidth
            && later.bound.unit.dimension() == Dimension::Length
            && limits
            && closes
    }

    /// Whether the adjective behind a number says that it measures something else than the number before: "depth 4 in. for 2 hr, max 2 in. *wide*".
    fn measures_another(&self, index: usize, held: &Name) -> bool {
        const MEASURES: &[(&str, &str)] = &[
            ("wide", "width"),
            ("deep", "depth"),
            ("thick", "thickness"),
            ("long", "length"),
            ("high", "height"),
        ];
        let amount = self.sentence.amount(index);
        let behind = amount.map_or(0, |amount| self.sentence.skip_parentheses(amount.last));
        let own = MEASURES
            .iter()
            .find(|(adjective, _)| self.sentence.is_word(behind, adjective));
        let named = held.property.map(|property| property.attribute.as_str());
        own.zip(named).is_some_and(|((_, own), named)| {
            MEASURES.iter().any(|(_, measure)| *measure == named) && *own != named
        })
    }

    /// Whether a condition stands right behind a number: "1/4 in. where backed by board".
    fn has_its_own_case(&self, reading: &Reading) -> bool {
        let last = reading.amounts.last();
        let amount = last.and_then(|index| self.sentence.amount(*index));
        amount.is_some_and(|amount| {
            let behind = self.sentence.skip_parentheses(amount.last);
            self.sentence.in_condition(behind)
        })
    }

    /// Whether a number says itself what it measures: "10 in. in width", "10 percent in extension".
    fn measures_its_own(&self, reading: &Reading) -> bool {
        let last = reading
            .amounts
            .last()
            .and_then(|index| self.sentence.amount(*index));
        last.is_some_and(|amount| {
            let after = self.sentence.skip_parentheses(amount.last);
            self.sentence.is_word(after, "in")
                && self.sentence.is_any(
                    after + 1,
                    &[
                        "width",
                        "depth",
                        "thickness",
                        "height",
                        "length",
                        "diameter",
                        "compression",
                        "extension",
                        "shear",
                        "opening",
                        "closing",
                    ],
                )
        })
    }

    /// Whether a count names nothing of its own and is for another case of what was counted before: "two layers for 1 Hr and *three* for 2
    /// Hr".
    fn repeats_the_count(&self, earlier: &Reading, reading: &Reading) -> bool {
        let sentence = self.sentence;
        let last = |reading: &Reading| {
            reading
                .amounts
                .last()
                .and_then(|index| sentence.amount(*index))
                .filter(|amount| amount.unit == Unit::Count)
        };
        let (Some(first), Some(own)) = (last(earlier), last(reading)) else {
            return false;
        };
        // After the words of the first count nothing is named until the second.
        let named = (first.last..own.first)
            .skip_while(|at| !sentence.is_stop(*at) && !sentence.in_condition(*at))
            .any(|at| {
                !sentence.in_condition(at)
                    && !sentence.is_stop(at)
                    && !sentence.is_any(
                        at,
                        &[
                            "and", "or", "at", "least", "not", "fewer", "than", "min", "max",
                        ],
                    )
            });
        let for_case = sentence.is_any(own.last, &["for", "at"])
            && (own.last..own.last + 4).any(|at| sentence.in_condition(at));
        for_case && !named
    }

    /// Whether nothing but conditions, qualifiers and joints stands between two numbers.
    fn only_conditions_between(&self, earlier: &Reading, later: &Reading) -> bool {
        let sentence = self.sentence;
        let amount = |reading: &Reading| {
            reading
                .amounts
                .last()
                .and_then(|index| sentence.amount(*index))
                .cloned()
        };
        let (Some(first), Some(second)) = (amount(earlier), amount(later)) else {
            return false;
        };
        let condition_between = (first.last..second.first).any(|at| sentence.in_condition(at));
        // `4-1/2 in. wide for 4 in. joint, 4 in. deep`
        let measure = |amount: &Amount| {
            let word = sentence.word(sentence.skip_parentheses(amount.last));
            ["wide", "deep", "thick", "long", "high"]
                .contains(&word)
                .then_some(word)
        };
        let another = measure(&first)
            .zip(measure(&second))
            .is_some_and(|(one, other)| one != other);
        // "1-5/8 in. for the second layer, 12 in. o.c."
        let spaced = |amount: &Amount| is_spaced(sentence, amount.last);
        let another = another || spaced(&second) && !spaced(&first);
        condition_between
            && !another
            && (first.last..second.first).all(|at| {
                sentence.in_condition(at)
                    || sentence.is_stop(at)
                    || sentence.is_any(
                        at,
                        &[
                            "and", "or", "min", "minimum", "max", "maximum", "nom", "nominal",
                            "not", "no", "less", "more", "than", "at", "least", "most", "a", "to",
                            "of", "be", "thick", "deep", "wide", "long",
                        ],
                    )
            })
    }

    /// The clause of one number.
    pub(super) fn clause(
        &self,
        reading: &Reading,
        parts: &[(Segment, Role)],
        name: &Name,
    ) -> Draft {
        let index = reading.amounts.first().copied().unwrap_or(0);
        let (condition, options) = self.governed(index);
        let span = self.words_of(reading, parts);
        let told = told(name);
        let property = match (name.property, &told) {
            (Some(property), _) => property.name.clone(),
            // As it stands: two numbers are of one thing only where the same words stand beside both.
            (None, Some(_)) => self.local(name),
            (None, None) => {
                let value = self.sentence.amount(index).map(|amount| amount.at);
                let value = value.unwrap_or_default().of(self.sentence.text);
                local_property(&self.around.item, &format!("undecided {value}"))
            }
        };
        let untold = Name {
            component: String::new(),
            attribute: NOT_DECIDED.to_owned(),
            doubtful: true,
            ..name.clone()
        };
        let name = told.as_ref().unwrap_or(&untold);
        let doubtful = name.doubtful
            || reading.doubtful
            || self.attached.get(index).is_some_and(|own| own.doubtful)
            || self.names_another(reading, parts, &options)
            || self.is_led_by_words(index, parts)
            || reading
                .bound
                .second
                .as_ref()
                .is_some_and(|second| second.agreement == Agreement::InConflict);
        Draft {
            span,
            property,
            component: name.component.clone(),
            attribute: name.attribute.clone(),
            requirement: Requirement::Bound(reading.bound.clone()),
            condition,
            options,
            read_by: vec![reading.rule.to_owned()],
            confidence: if doubtful {
                Confidence::WithDoubt
            } else {
                Confidence::ByRule
            },
        }
    }

    /// Whether the words of a number name a configuration, and not the one that it was given.
    fn names_another(
        &self,
        reading: &Reading,
        parts: &[(Segment, Role)],
        options: &[String],
    ) -> bool {
        let Some(extent) = self.extent(reading, parts) else {
            return false;
        };
        let named = self.governing.iter().skip(self.first_configuration);
        let mut named = named
            .filter(|found| extent.first <= found.first && found.last <= extent.last)
            .filter_map(|found| match &found.expr {
                Expr::Words(name) => Some(name),
                _ => None,
            })
            .peekable();
        named.peek().is_some() && !named.any(|name| options.contains(name))
    }

    /// Whether the sentence opens with words that say where or when, and that stayed words: "In the gap above the board, min 5/8 in. of wool". What they
    /// confine the number to nobody has read.
    fn is_led_by_words(&self, index: usize, parts: &[(Segment, Role)]) -> bool {
        const LEADING: &[&str] = &[
            "in", "at", "where", "when", "if", "for", "between", "above", "over", "around",
            "beneath", "below", "under", "along", "within", "behind", "with",
        ];
        let Some((opening, Role::Prose)) = parts.first() else {
            return false;
        };
        let amount = self.sentence.amount(index).map_or(0, |amount| amount.first);
        let parted = (opening.last..amount).any(|at| self.sentence.is_sign(at, ';'));
        self.sentence.is_any(opening.first, LEADING) && opening.last <= amount && !parted
    }

    fn local(&self, name: &Name) -> String {
        local_property(
            &self.around.item,
            &format!("{} {}", name.component, name.attribute),
        )
    }

    /// The condition and the options that govern an amount.
    pub(super) fn governed(&self, index: usize) -> (Option<Condition>, Vec<String>) {
        let mut options = self.around.options.clone();
        let mut condition: Option<Condition> = None;
        if let Some((first, last)) = self
            .permitted
            .iter()
            .find(|permitted| permitted.amounts.contains(&index))
            .and_then(|permitted| permitted.words)
        {
            let words = self.sentence.words(first, last).to_owned();
            condition = Some(Condition {
                also: Vec::new(),
                span: self.sentence.source_of(first, last),
                expr: Expr::Words(words.clone()),
                words,
            });
        }
        let attached = self.attached.get(index).cloned().unwrap_or_default();
        // A configuration that the words name stands for the one that the paragraph is headed with.
        let names_own = attached
            .conditions
            .iter()
            .any(|number| *number >= self.first_configuration);
        let of_all = self.around.headed.is_some() && self.is_said_of_all(index);
        if names_own || of_all {
            options.retain(|option| Some(option) != self.around.headed.as_ref());
        }
        let always = self.holds_always(index);
        let rated_alike = self.holds_for_all_ratings(index);
        for number in attached.conditions {
            let Some(found) = self.governing.get(number) else {
                continue;
            };
            let lifted = always || rated_alike && found.expr.is_of_rating();
            if lifted && number < self.first_configuration {
                continue;
            }
            if number >= self.first_configuration {
                if let Expr::Words(name) = &found.expr
                    && !options.contains(name)
                {
                    options.push(name.clone());
                }
                continue;
            }
            let span = self.sentence.source_of(found.first, found.last);
            let words = self.sentence.words(found.first, found.last).to_owned();
            let part = attached.part.as_ref().filter(|(of, _)| *of == number);
            let expr = part.map_or_else(|| found.expr.clone(), |(_, part)| part.clone());
            let own = Condition {
                words,
                span,
                also: Vec::new(),
                expr,
            };
            condition = Some(match condition {
                None => own,
                Some(held) => held.and(own),
            });
        }
        (condition, options)
    }

    /// Whether a number stands in a stretch that is said of all configurations: "Configuration A: 4 in. deep; both configurations: min 4 pcf".
    fn is_said_of_all(&self, index: usize) -> bool {
        let sentence = self.sentence;
        let first = sentence.amount(index).map_or(0, |amount| amount.first);
        let begins = (0..first).rev().find(|at| sentence.is_sign(*at, ';'));
        is_said_of_all(sentence, begins.map_or(0, |at| at + 1))
    }

    /// Whether a number says itself that it holds in every case, whatever condition its sentence opens with: "In joints over 2 in., depth min 1 in., and
    /// overlap min 1/2 in. *in all cases*".
    fn holds_always(&self, index: usize) -> bool {
        const CASES: &[&str] = &["case", "cases", "joint", "joints", "instance", "instances"];
        self.holds_in_all(index, CASES)
    }

    /// Whether a number says itself that it holds for every rating, whatever rating its sentence opens with.
    fn holds_for_all_ratings(&self, index: usize) -> bool {
        const RATINGS: &[&str] = &["rating", "ratings", "system", "systems"];
        self.holds_in_all(index, RATINGS)
    }

    fn holds_in_all(&self, index: usize, of_what: &[&str]) -> bool {
        let sentence = self.sentence;
        let Some(amount) = sentence.amount(index) else {
            return false;
        };
        let from = sentence.floor(index);
        let to = sentence
            .amount(index + 1)
            .map_or(sentence.tokens.len(), |next| next.first);
        let parts = |at: &usize| sentence.is_stop(*at) || sentence.is_sign(*at, '.');
        let own = (from..amount.first).rev().take_while(|at| !parts(at));
        let behind = (amount.last..to).take_while(|at| !parts(at));
        let ends = |at: usize| {
            sentence.token(at).is_none_or(|token| {
                token.word().is_none() || sentence.is_any(at, &["and", "the", "overlap", "depth"])
            })
        };
        own.chain(behind).any(|at| {
            let every = sentence.is_any(at, &["in", "for"])
                && sentence.is_any(at + 1, &["all", "every", "any", "either"]);
            let case = sentence.is_any(at + 2, of_what);
            every && case && !sentence.in_condition(at) && ends(at + 3)
        })
    }

    /// The words that a number's clause shows.
    fn words_of(&self, reading: &Reading, parts: &[(Segment, Role)]) -> Span {
        self.extent(reading, parts)
            .map_or_else(Span::default, |extent| {
                self.sentence.source_of(extent.first, extent.last)
            })
    }

    /// The tokens that a number's clause shows: its segment, from the words that bound it on, and the single words after it; the opening
    /// of the sentence leads to its first number.
    pub(super) fn extent(&self, reading: &Reading, parts: &[(Segment, Role)]) -> Option<Segment> {
        let sentence = self.sentence;
        let amount = sentence.amount(*reading.amounts.first()?)?;
        let last_amount = reading
            .amounts
            .last()
            .and_then(|index| sentence.amount(*index))
            .map_or(amount.last, |amount| amount.last);
        let own = parts
            .iter()
            .position(|(segment, _)| segment.first <= amount.first && amount.first < segment.last);
        let Some((own, (segment, _))) = own.and_then(|own| Some((own, parts.get(own)?))) else {
            return Some(Segment {
                first: amount.first,
                last: last_amount,
            });
        };
        let leads = own == 0 || matches!(parts.first(), Some((_, Role::Lead)) if own == 1);
        let first = if leads { 0 } else { segment.first };
        let words_after = parts
            .iter()
            .skip(own + 1)
            .take_while(|(_, role)| *role == Role::Word);
        let last = words_after
            .last()
            .map_or(segment.last, |(word, _)| word.last)
            .max(last_amount);
        Some(Segment {
            first: first.min(reading.from),
            last,
        })
    }

    /// The numbers of class codes, each a clause that shows the whole sentence.
    pub(super) fn classes(&self, classes: &[ClassNumber], span: Span, found: &mut Yield) {
        let condition = self.governing.first().map(|found| Condition {
            also: Vec::new(),
            words: self.sentence.words(found.first, found.last).to_owned(),
            span: self.sentence.source_of(found.first, found.last),
            expr: found.expr.clone(),
        });
        for class in classes {
            let name = class.name();
            let property = name
                .property
                .map_or_else(|| self.local(&name), |property| property.name.clone());
            found.clauses.push(Draft {
                span,
                property,
                component: name.component,
                attribute: name.attribute,
                requirement: Requirement::Bound(class.bound(self.sentence)),
                condition: condition.clone(),
                options: self.around.options.clone(),
                read_by: vec!["class code".to_owned()],
                confidence: Confidence::ByRule,
            });
        }
    }
}

/// The name of a thickness beside a gauge, or of a gauge beside a thickness.
fn same_sheet(held: &Name, dimension: Dimension) -> Option<Name> {
    let property = held.property?;
    let component = vocabulary().component(&property.component)?;
    let attributes: &[&str] = if dimension == Dimension::Gauge {
        &["gauge"]
    } else {
        &["steel_thickness", "thickness"]
    };
    let sheet = attributes
        .iter()
        .find_map(|attribute| component.property(attribute))?;
    Some(Name {
        property: Some(sheet),
        attribute: sheet.attribute.replace('_', " "),
        ..held.clone()
    })
}
