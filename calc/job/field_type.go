package job

import (
	"gaugewright/calc/basis"
	"gaugewright/calc/quantity"
)

// typeFields describe a pile type: its section, its material, and what it
// stands while it is pressed.
var typeFields = join([]Field{
	words("/pileTypes/*/name"),
	choice("/pileTypes/*/material", "concrete", "steel", "timber"),
	choice("/pileTypes/*/shape", "square", "round", "spun", "tube", "H", "timber"),
	choice("/pileTypes/*/section", sectionNames()...), // of a table of calc/basis
	size("/pileTypes/*/width", 5), size("/pileTypes/*/wall", 1),
	size("/pileTypes/*/depth", 5), size("/pileTypes/*/flange", 1), size("/pileTypes/*/web", 1), // of an H section
	size("/pileTypes/*/tip", 5),                                 // width at the toe of a tapered pile
	area("/pileTypes/*/area"), size("/pileTypes/*/gyration", 2), // as printed in a table of sections
	{Pattern: "/pileTypes/*/lineMass", Kind: Quantity, Dim: quantity.LineMasses, Unit: "kg/m", MinOpen: true, Max: 100},

	words("/pileTypes/*/concrete/class"), strength("/pileTypes/*/concrete/strength"),
	choice("/pileTypes/*/concrete/specimen", "cube", "cylinder"), pressureFromZero("/pileTypes/*/concrete/prestress"),
	choice("/pileTypes/*/concrete/hardening", "slow", "normal", "rapid"),
	counted("/pileTypes/*/concrete/age", 1, 36500), // of the youngest segment when it is pressed [days]
	words("/pileTypes/*/steel/grade"), strength("/pileTypes/*/steel/yield"),
	words("/pileTypes/*/timber/class"), strength("/pileTypes/*/timber/strength"),
	stiffness("/pileTypes/*/stiffness"),
	choice("/pileTypes/*/buckling/curve", "a0", "a", "b", "c", "d"), ratio("/pileTypes/*/buckling/lengthFactor", "", 0, 4, true),
	ratio("/pileTypes/*/buckling/pitchingFactor", "", 0, 4, true),

	force("/pileTypes/*/pressingLimit", true), words("/pileTypes/*/pressingLimitBasis"),
	choice("/pileTypes/*/drivingLimit", "maker", "while pressing", "0.8 fck with prestress", "0.8 fy", "0.9 fy", "0.8 timber"),
	force("/pileTypes/*/gripLimit", true),
	choice("/pileTypes/*/splice/kind", spliceKinds...), words("/pileTypes/*/splice/class"), force("/pileTypes/*/splice/capacity", true),
	duration("/pileTypes/*/splice/time", "min", false, 86400), duration("/pileTypes/*/splice/cooling", "min", false, 86400),
	force("/pileTypes/*/followerCapacity", true),
	{Pattern: "/pileTypes/*/bars", Kind: Quantity, Dim: quantity.Lengths, Unit: "m", Max: 10},
	{Pattern: "/pileTypes/*/lap", Kind: Quantity, Dim: quantity.Lengths, Unit: "m", Max: 10},
}, struck("/pileTypes/*"))

func sectionNames() []string {
	var names []string
	for _, s := range basis.Sections() {
		names = append(names, s.Name)
	}
	return names
}
