package segment

import (
	"gaugewright/calc/quantity"
	"gaugewright/calc/working"
)

// DecideAt returns the level of the toe at which the head of a pile of length L
// reaches the level Z_s where splices are made:
//
//	Z_t = Z_s - L
//
// Below it no segment can be spliced on any more: by then it must be decided
// whether to splice, or to go on with a follower. [m]. Source: geometry.
func DecideAt(spliceAt, length quantity.Length) quantity.Length { return spliceAt - length }

// ToeLeft returns how far the toe has still to go from there, Z_t - Z_toe [m].
func ToeLeft(decide, toe quantity.Length) quantity.Length { return decide - toe }

// StickUp returns how high the head stands above platform when the toe is at
// its level, Z_toe + L - Z_p [m]; negative below platform. Source: geometry.
func StickUp(toe, length, platform quantity.Length) quantity.Length { return toe + length - platform }

// The rules of these. DecideRule has the inputs Z_s, L; ToeLeftRule Z_t, Z_toe;
// StickUpRule Z_toe, L, Z_p.
var (
	DecideRule = working.Rule{Key: "segment.decide", Symbol: "Z_t", Formula: "Z_s - L", Dim: quantity.Lengths, Decimals: 4, Basis: "segment.joint.stopToe",
		Inputs: []working.Symbol{spliceLevel, totalLength}}
	ToeLeftRule = working.Rule{Key: "segment.toeLeft", Symbol: "d_t", Formula: "Z_t - Z_toe", Dim: quantity.Lengths, Decimals: 4, Basis: "geometry",
		Inputs: []working.Symbol{stopToe, foundingLevel}}
	StickUpRule = working.Rule{Key: "segment.stickUp", Symbol: "h", Formula: "Z_toe + L - Z_p", Dim: quantity.Lengths, Decimals: 4, Basis: "geometry",
		Inputs: []working.Symbol{foundingLevel, totalLength, {Name: "Z_p", Dim: quantity.Lengths, Key: "platformLevel"}}}
)
