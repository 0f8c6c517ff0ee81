package job

// gaugeFields describe a pressure gauge. Its zero is checked in records of the
// kind "zero".
var gaugeFields = join([]Field{
	words("/gauges/*/serial"),
	pressure("/gauges/*/fullScale"), pressure("/gauges/*/division"),
	ratio("/gauges/*/class", "%", 0, 0.2, true),
	ratio("/gauges/*/share", "%", 0, 1, true),
	pressureFromZero("/gauges/*/zeroError"), celsius("/gauges/*/celsius"),
}, struck("/gauges/*"))

// certificateFields describe a calibration: of a gauge alone (pressure against
// pressure), of one cylinder on a bench, or of a whole circuit in its rig. The
// first column is what was read on the gauge, the second the reference; which
// of them was set stands in "set". A pressure column may be any unit of
// pressure, a load column any of force.
var certificateFields = join([]Field{
	words("/certificates/*/number"),
	choice("/certificates/*/kind", "gauge", "cylinder", "circuit"),
	reference("/certificates/*/rig", "rigs"), reference("/certificates/*/circuit", "circuits"), reference("/certificates/*/gauge", "gauges"),
	words("/certificates/*/serial"), counted("/certificates/*/cylinders", 1, 64),
	words("/certificates/*/laboratory"), date("/certificates/*/on"),
	counted("/certificates/*/validMonths", 1, 120), counted("/certificates/*/validPiles", 1, 100000),
	date("/certificates/*/voidFrom"), words("/certificates/*/voidWhy"),
	choice("/certificates/*/run", "rising", "falling"), choice("/certificates/*/ram", "active", "passive"),
	choice("/certificates/*/set", "reading", "load"), yesNo("/certificates/*/onHeadIncluded"),
	{Pattern: "/certificates/*/columns", Kind: Columns, Columns: certificateColumns},
	{Pattern: "/certificates/*/points", Kind: Lines, Columns: certificateColumns, Under: "columns"},
	{Pattern: "/certificates/*/falling", Kind: Lines, Columns: certificateColumns, Under: "columns"},
	choice("/certificates/*/fit", "line", "quadratic"),
	ratio("/certificates/*/referenceUncertainty", "%", 0, 0.5, false), ratio("/certificates/*/coverage", "", 1, 4, false),
	celsius("/certificates/*/celsius"),
	choice("/certificates/*/asFound", "within limits", "outside limits", "not tested"), words("/certificates/*/asFoundSays"),
}, struck("/certificates/*"))
