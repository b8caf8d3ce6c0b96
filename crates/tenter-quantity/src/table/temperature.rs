//! Temperatures and times.

use super::{SI, SP811, row};
use crate::dimension::Dimension::{Temperature, Time};
use crate::unit::Unit;

pub(super) static UNITS: &[Unit] = &[
    row(
        "°C",
        "degree Celsius",
        &[
            "°C",
            "C",
            "° C",
            "deg C",
            "degC",
            "degree C",
            "degrees C",
            "celsius",
            "deg celsius",
            "degree celsius",
            "degrees celsius",
            "centigrade",
            "degrees centigrade",
        ],
        Temperature,
        1.0,
        SI,
    )
    .offset(273.15),
    // K = (°F + 459.67) / 1.8
    row(
        "°F",
        "degree Fahrenheit",
        &[
            "°F",
            "F",
            "° F",
            "deg F",
            "degF",
            "degree F",
            "degrees F",
            "fahrenheit",
            "deg fahrenheit",
            "degree fahrenheit",
            "degrees fahrenheit",
        ],
        Temperature,
        1.0 / 1.8,
        SP811,
    )
    .offset(459.67 / 1.8),
    row("K", "kelvin", &["K", "kelvin", "kelvins"], Temperature, 1.0, SI),
    row("s", "second", &["s", "sec", "secs", "second", "seconds"], Time, 1.0, SI),
    row("min", "minute", &["min", "mins", "minute", "minutes"], Time, 60.0, SI),
    row("h", "hour", &["h", "hr", "hrs", "hour", "hours"], Time, 3600.0, SI),
    row("day", "day", &["day", "days", "d"], Time, 86_400.0, SI).plural("days"),
    row("week", "week", &["week", "weeks", "wk", "wks"], Time, 604_800.0, SI).plural("weeks"),
    // 365.2425 days / 12; a calendar month runs from 28 to 31 days.
    row(
        "month",
        "month",
        &["month", "months"],
        Time,
        2_629_746.0,
        "mean month of the Gregorian calendar, 365.2425 d / 12",
    )
    .plural("months")
    .spread(0.08),
];
