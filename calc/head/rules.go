package head

import (
	"gaugewright/calc/quantity"
	"gaugewright/calc/working"
)

func length(name, key string) working.Symbol {
	return working.Symbol{Name: name, Dim: quantity.Lengths, Key: key}
}

var (
	cutoffLevel   = length("Z_c", "cutoffLevel")
	headLevel     = length("Z_h", "headLevel")
	platformLevel = length("Z_p", "platformLevel")
	aboveCutoff   = length("c", "headAboveCutoff")
	barProjection = length("l_p", "barProjection")
	lapLength     = length("l_0", "lapLength")
)

// The rules of [Compute], each for the field of [Result] that its name says.
// The inputs stand in the order of the formula's symbols below.
var (
	// AboveRule has the inputs Z_h, Z_c.
	AboveRule = working.Rule{Key: "head.above", Symbol: "c", Formula: "Z_h - Z_c",
		Inputs: []working.Symbol{headLevel, cutoffLevel}, Dim: quantity.Lengths, Decimals: 3, Basis: "head.cutoff"}
	// SawLevelRule has the inputs Z_c, l_p.
	SawLevelRule = working.Rule{Key: "head.sawLevel", Symbol: "Z_s", Formula: "Z_c + l_p",
		Inputs: []working.Symbol{cutoffLevel, barProjection}, Dim: quantity.Lengths, Decimals: 3, Basis: "head.cutoff"}
	// SawAbovePlatformRule has the inputs Z_c, l_p, Z_p.
	SawAbovePlatformRule = working.Rule{Key: "head.sawAbovePlatform", Symbol: "h_s", Formula: "Z_c + l_p - Z_p",
		Inputs: []working.Symbol{cutoffLevel, barProjection, platformLevel}, Dim: quantity.Lengths, Decimals: 3, Basis: "head.cutoff"}
	// FromHeadRule has the inputs c, l_p.
	FromHeadRule = working.Rule{Key: "head.fromHead", Symbol: "a", Formula: "c - l_p",
		Inputs: []working.Symbol{aboveCutoff, barProjection}, Dim: quantity.Lengths, Decimals: 3, Basis: "head.cutoff"}
	// OffCutRule has the inputs c, l_p. It is max(0, c - l_p), written without a
	// bare zero, which has no unit.
	OffCutRule = working.Rule{Key: "head.offCut", Symbol: "o", Formula: "max(c, l_p) - l_p",
		Inputs: []working.Symbol{aboveCutoff, barProjection}, Dim: quantity.Lengths, Decimals: 3, Basis: "head.cutoff"}
	// ShortRule has the inputs l_p, c.
	ShortRule = working.Rule{Key: "head.short", Symbol: "s", Formula: "l_p - c",
		Inputs: []working.Symbol{barProjection, aboveCutoff}, Dim: quantity.Lengths, Decimals: 3, Basis: "head.cutoff"}
	// BreakToRule has the inputs Z_h, l_0.
	BreakToRule = working.Rule{Key: "head.breakTo", Symbol: "Z_b", Formula: "Z_h - l_0",
		Inputs: []working.Symbol{headLevel, lapLength}, Dim: quantity.Lengths, Decimals: 3, Basis: "head.buildUp"}
	// HeightRule has the inputs c, l_0.
	HeightRule = working.Rule{Key: "head.height", Symbol: "h_b", Formula: "-c + l_0",
		Inputs: []working.Symbol{aboveCutoff, lapLength}, Dim: quantity.Lengths, Decimals: 3, Basis: "head.buildUp"}
)
