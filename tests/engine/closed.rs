//! The engine on ground without losses, where closed forms say what it should do.

use crate::bike::{Bike, Start, lossless};
use crate::settings::{Kind, Settings};
use crate::table::{Row, head, speed};
use crate::world::{Moment, ride, where_it_comes_to};
use glam::{DMat2, DVec2};
use sim::constants::GRAVITY;
use sim::profile::Profile;
use tests::bare;
use tests::curve::Curve;
use tests::lines::{self, Named, PUSH_OFF};

/// Where the rear wheel's contact is at the start, m along the line.
pub const START: f64 = 0.05;

fn flat(settings: &Settings, bike: &Bike) -> Row {
    let ground = bare::ground(0.0, &[(25.0, 0.0)]);
    let start = bike.standing(&Curve::over(&ground, bike.radius), START, 6.0);
    let moments = ride(&ground, settings, bike, &start, |m| m.t > 3.0);
    let got = where_it_comes_to(&moments, |m| m.t, 3.0).map(|m| m.velocity.x);
    speed(
        Kind::Flat,
        "level, after 3 s from 6 m/s",
        "uniform motion",
        6.0,
        got,
    )
}

/// Down 10°, 42 kg, two wheels of 0.06 kg m² that roll on 0.25 m.
fn grade(settings: &Settings, bike: &Bike) -> Row {
    let mut bike = bike.clone();
    bike.mass = 42.0;
    bike.wheel_inertia = 0.06 * (bike.radius / 0.25) * (bike.radius / 0.25);
    let ground = bare::ground(-10.0_f64.to_radians(), &[(30.0, 0.0)]);
    let start = bike.standing(&Curve::over(&ground, bike.radius), START, 0.0);
    let moments = ride(&ground, settings, &bike, &start, |m| m.t > 4.0);
    let got = where_it_comes_to(&moments, |m| m.t, 4.0).map(|m| m.velocity.length());
    let source = "a = M g sin θ/(M + 2 I/R²)";
    speed(
        Kind::Grade,
        "down 10° from rest, after 4 s",
        source,
        4.0 * 1.628463,
        got,
    )
}

/// A rigid body whose wheels roll in a hollow turns about its centre: a compound pendulum, to whose
/// inertia the wheels add what their own spin takes.
fn hollow(settings: &Settings, bike: &Bike) -> Row {
    let (radius, angle) = (6.0, 0.7);
    let ground = bare::ground(-angle, &[(1.6 * angle * radius, 1.0 / radius)]);
    let start = bike.standing(&Curve::over(&ground, bike.radius), START, 0.0);
    let pivot = DVec2::from_angle(-angle).perp() * radius;
    let rolls = radius - bike.radius;
    let half = 0.5 * bike.wheelbase;
    let arm = (rolls * rolls - half * half).sqrt() - bike.rise;
    let spin = rolls / bike.radius;
    let inertia = bike.inertia + bike.mass * arm * arm + 2.0 * bike.wheel_inertia * spin * spin;
    let swing = -start.pitch;
    let turning = (2.0 * bike.mass * GRAVITY * arm * (1.0 - swing.cos()) / inertia).sqrt();
    let moments = ride(&ground, settings, bike, &start, |m| m.middle.x > pivot.x);
    let got = where_it_comes_to(&moments, |m| m.middle.x, pivot.x).map(|m| m.velocity.length());
    let source = "compound pendulum (Goldstein, Classical Mechanics)";
    speed(
        Kind::Hollow,
        "hollow, R 6 m from 40°, at the bottom",
        source,
        turning * arm,
        got,
    )
}

/// Landings tried, each from 1 mm higher.
const FALLS: u32 = 20;

const KEPT: &str = "conservation of energy";

/// A line until the front wheel comes to its end or its lip's edge, and where there is a lip, until
/// the rear wheel does.
fn line(kind: Kind, line: &Named, settings: &Settings, bike: &Bike) -> Vec<Row> {
    let ground = Profile::build(&line.plan).expect("the line can be built");
    let curve = Curve::over(&ground, bike.radius);
    let start = bike.standing(&curve, START, PUSH_OFF);
    let end = curve.at(curve.length).point.x;
    let lip = curve.ends_in_a_lip;
    let moments = ride(&ground, settings, bike, &start, |m| {
        m.axles[usize::from(!lip)].x >= end
    });
    let last = bike.standing(&curve, curve.behind(curve.length, bike.wheelbase), 1.0);
    let left = bike.head(&start) - bike.height(&last);
    let expected = (left / bike.moving_head(&last)).sqrt() * bike.velocity(&last).length();
    let front = where_it_comes_to(&moments, |m| m.axles[1].x, end);
    let got = front.map(|m| m.velocity.length());
    let mut rows = vec![speed(
        kind,
        &format!("{}, front wheel at the end", line.name),
        KEPT,
        expected,
        got,
    )];
    if lip {
        let rear = where_it_comes_to(&moments, |m| m.axles[0].x, end).map(|m| m.head);
        let what = format!("{}, rear wheel leaves", line.name);
        rows.push(head(kind, &what, KEPT, bike.head(&start), rear));
    }
    rows
}

/// Thrown at 6 m/s and 45°.
fn flight(settings: &Settings, bike: &Bike) -> Row {
    let start = Start {
        middle: DVec2::new(2.0, 10.0),
        velocity: DVec2::from_angle(45.0_f64.to_radians()) * 6.0,
        pitch: 0.0,
        turning: 0.0,
        rims: [6.0; 2],
    };
    let moments = ride(
        &bare::ground(0.0, &[(25.0, 0.0)]),
        settings,
        bike,
        &start,
        |m| m.velocity.y < 0.0,
    );
    let height = |m: &Moment| m.middle.y - start.middle.y;
    let got = moments.iter().map(height).fold(0.0, f64::max);
    let expected = 0.25 * 36.0 / GRAVITY;
    head(
        Kind::Flight,
        "thrown at 6 m/s and 45°, rises",
        "v² sin² θ/(2 g)",
        expected,
        Some(got),
    )
}

/// Falls at 5 m/s onto its rear wheel, nose up by 0.3 rad, and does not bounce.
///
/// The blow J changes the velocity of the wheel's contact by A J; it ends what goes into the ground
/// and leaves no slip, which takes the energy ½ v A⁻¹ v. With d from the mass centre to the axle:
///
/// ```text
/// A = | 1/M + d_y²/I + R²/I_w    −d_x d_y/I      |   along the ground
///     | −d_x d_y/I               1/M + d_x²/I    |   square to it
/// ```
fn landing(settings: &Settings, bike: &Bike, fall: f64) -> Row {
    let (pitch, rolls) = (0.3, 5.0);
    let along = DVec2::from_angle(pitch);
    let arm = along * (0.5 * bike.wheelbase);
    let start = Start {
        middle: DVec2::new(1.0, bike.radius + fall) + arm,
        velocity: DVec2::X * rolls,
        pitch,
        turning: 0.0,
        rims: [rolls; 2],
    };
    let d = -arm - along.perp() * bike.rise;
    let coupled = -d.x * d.y / bike.inertia;
    let wheel = bike.radius * bike.radius / bike.wheel_inertia;
    let of_blow = DMat2::from_cols(
        DVec2::new(1.0 / bike.mass + d.y * d.y / bike.inertia + wheel, coupled),
        DVec2::new(coupled, 1.0 / bike.mass + d.x * d.x / bike.inertia),
    );
    let into = DVec2::new(0.0, (2.0 * GRAVITY * fall).sqrt());
    let lost = 0.5 * into.dot(of_blow.inverse() * into) / (bike.mass * GRAVITY);
    // The front wheel comes down later.
    let after = (2.0 * fall / GRAVITY).sqrt() + 0.05;
    let moments = ride(
        &bare::ground(0.0, &[(25.0, 0.0)]),
        settings,
        bike,
        &start,
        |m| m.t > after,
    );
    let got = where_it_comes_to(&moments, |m| m.t, after).map(|m| m.head);
    head(
        Kind::Landing,
        &format!("falls {fall:.3} m onto the rear wheel, keeps"),
        "impulse and momentum, plastic",
        bike.head(&start) - lost,
        got,
    )
}

/// Everything that is measured with one of the riders.
pub fn rows(settings: &Settings, rider: usize) -> Vec<Row> {
    let bike = Bike::of(&lossless(rider));
    let mut rows = vec![
        flat(settings, &bike),
        grade(settings, &bike),
        hollow(settings, &bike),
    ];
    rows.extend(line(Kind::Ramp, &lines::ramp(2.0), settings, &bike));
    let rollers = lines::rollers(1.2, 0.15, 4.0, 4);
    rows.extend(line(Kind::Rollers, &rollers, settings, &bike));
    rows.extend(line(Kind::Lip, &lines::lip(1.6, 0.6, 5.0), settings, &bike));
    rows.push(flight(settings, &bike));
    // When in a step it comes down decides how far off it is: the farthest of some.
    let falls = (0..FALLS).map(|i| landing(settings, &bike, 0.2 + 1e-3 * f64::from(i)));
    rows.extend(falls.max_by(|a, b| a.off.abs().total_cmp(&b.off.abs())));
    rows
}
