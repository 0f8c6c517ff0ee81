package job

import "gaugewright/calc/quantity"

// rigFields describe a rig: its weight and where it acts, its feet, its grip,
// and how high and how far it reaches. Distances along the rig are measured
// from the middle between the feet, positive towards the pressing point.
var rigFields = join([]Field{
	words("/rigs/*/name"), words("/rigs/*/serial"),
	mass("/rigs/*/mass", true), mass("/rigs/*/ballast", false), mass("/rigs/*/ballastMost", false),
	words("/rigs/*/pieces/*/name"), mass("/rigs/*/pieces/*/mass", true), counted("/rigs/*/pieces/*/count", 0, 10000),
	length("/rigs/*/pieces/*/at", -50, 50),
	ratio("/rigs/*/reactionShare", "", 0, 1, true),
	length("/rigs/*/massCentre", -50, 50), length("/rigs/*/halfSpacing", 0, 50), length("/rigs/*/bodyTravel", 0, 50),
	force("/rigs/*/sideLimit", true), force("/rigs/*/cornerLimit", true),

	counted("/rigs/*/feet/long/number", 1, 16), length("/rigs/*/feet/long/length", 0, 50), length("/rigs/*/feet/long/width", 0, 50),
	counted("/rigs/*/feet/short/number", 1, 16), length("/rigs/*/feet/short/length", 0, 50), length("/rigs/*/feet/short/width", 0, 50),
	choice("/rigs/*/bearing/kind", "allowable", "design resistance", "ultimate"),
	bearing("/rigs/*/bearing/travelling"), bearing("/rigs/*/bearing/pressing"), bearing("/rigs/*/bearing/suddenLoss"),
	words("/rigs/*/bearing/basis"), words("/rigs/*/bearing/number"), words("/rigs/*/bearing/by"), date("/rigs/*/bearing/on"),

	counted("/rigs/*/grip/faces", 1, 64), ratio("/rigs/*/grip/mu", "", 0, 2, true), force("/rigs/*/grip/force", true),
	size("/rigs/*/grip/width", 5), size("/rigs/*/grip/height", 5), pressure("/rigs/*/grip/facePressure"), movement("/rigs/*/grip/offAxis", 1),
	words("/rigs/*/grip/basis"),

	length("/rigs/*/gripHeight", 0, 50, NotKnown, NotApplicable),
	length("/rigs/*/followerTravel", 0, 50, NotApplicable),
	length("/rigs/*/spliceHeight", 0, 50), length("/rigs/*/walkOver", 0, 50),
}, struck("/rigs/*/pieces/*"), struck("/rigs/*"))

// circuitFields describe the cylinders that one valve position feeds.
var circuitFields = join([]Field{
	words("/rigs/*/circuits/*/name"),
	choice("/rigs/*/circuits/*/place", "main", "side", "corner"), length("/rigs/*/circuits/*/at", -50, 50),
	counted("/rigs/*/circuits/*/groups/#/number", 1, 64),
	size("/rigs/*/circuits/*/groups/#/bore", 2), size("/rigs/*/circuits/*/groups/#/rod", 2),
	choice("/rigs/*/circuits/*/groups/#/side", "bore", "rod", "joined"),
	{Pattern: "/rigs/*/circuits/*/stroke", Kind: Quantity, Dim: quantity.Lengths, Unit: "m", MinOpen: true, Max: 20},
	duration("/rigs/*/circuits/*/strokeTime", "s", true, 3600),
	pressure("/rigs/*/circuits/*/maxPressure"), pressureFromZero("/rigs/*/circuits/*/returnPressure"),
	pressure("/rigs/*/circuits/*/reliefValve"),
	force("/rigs/*/circuits/*/onHead", false), force("/rigs/*/circuits/*/onHeadUncertainty", false),
	yesNo("/rigs/*/circuits/*/onHeadInMass"),
	choice("/rigs/*/circuits/*/loadBy", "efficiency", "certificate"),
	ratio("/rigs/*/circuits/*/efficiency/low", "", 0, 1, true),
	ratio("/rigs/*/circuits/*/efficiency/high", "", 0, 1, true),
	words("/rigs/*/circuits/*/efficiency/basis"),
	reference("/rigs/*/circuits/*/gauge", "gauges"),
}, struck("/rigs/*/circuits/*"))
