// Package quantity holds the typed quantities of the product, the closed list
// of units, and the two text grammars in which quantities are written.
//
// # Coherent units
//
// Inside the product every number is in kilonewton, metre, kilopascal, tonne
// and second. The system is coherent: 1 kN = 1 t m/s2 and 1 kPa = 1 kN/m2, so
// a formula in symbols needs no factor of ten anywhere.
//
// # Two grammars
//
// A stated quantity is what a job file holds: an optional minus, digits, an
// optional point and digits, one space, a unit of the closed list: "120 tf",
// "-8.35 m". A plain ratio has no unit and no space. [ParseStated] reads it and
// refuses everything else.
//
// A typed quantity is what a person writes into a box: [ReadTyped] accepts a
// point or a comma, spaces of several kinds, a unit or none, and either returns
// the stated form with every digit kept or says what is wrong. It never guesses
// a unit, and it asks about "1,200".
//
// # Rounding
//
// Rounding happens once, at the end, by [RoundUp] and [RoundDown], to a whole
// number of divisions with the slack stated there.
package quantity
