package segment

import (
	"strconv"

	"gaugewright/calc/quantity"
	"gaugewright/calc/working"
)

// Heights returns the heights of the joints above the toe, from the toe up
// [0.1 mm].
func (m Makeup) Heights(stock []Piece) []int64 {
	var list []int64
	sum := int64(0)
	for at, line := range m.Sequence {
		if at > 0 {
			list = append(list, sum)
		}
		sum += stock[line].Length
	}
	return list
}

// Level returns the level of a joint at a height above the toe.
func (r JointRules) Level(height int64) quantity.Length { return r.Toe + Metres(height) }

// ToeAtStop returns the level of the toe while the joint at a height above the
// toe is made, Z_t = Z_s - (l_1 + ... + l_j).
func (r JointRules) ToeAtStop(height int64) quantity.Length { return r.SpliceAt - Metres(height) }

var (
	foundingLevel = working.Symbol{Name: "Z_toe", Dim: quantity.Lengths, Key: "toeLevel"}
	cutoffLevel   = working.Symbol{Name: "Z_c", Dim: quantity.Lengths, Key: "cutoffLevel"}
	jointLevel    = working.Symbol{Name: "Z_j", Dim: quantity.Lengths, Key: "jointLevel"}
	spliceLevel   = working.Symbol{Name: "Z_s", Dim: quantity.Lengths, Key: "spliceLevel"}
	stopToe       = working.Symbol{Name: "Z_t", Dim: quantity.Lengths, Key: "stopToe"}
	stratumTop    = working.Symbol{Name: "Z_1", Dim: quantity.Lengths, Key: "stratumTop"}
	stratumBottom = working.Symbol{Name: "Z_2", Dim: quantity.Lengths, Key: "stratumBottom"}
)

// JointLevelRule is the level of the joint above so many pieces,
//
//	Z_j = Z_toe + l1 + l2 + ...
//
// with the inputs Z_toe, l1, l2 and so on, from the toe up. pieces >= 1.
func JointLevelRule(pieces int) working.Rule {
	r := working.Rule{Key: "segment.joint.level", Symbol: "Z_j", Formula: "Z_toe", Dim: quantity.Lengths, Decimals: 4, Basis: "segment.joint.level",
		Inputs: []working.Symbol{foundingLevel}}
	for i := 1; i <= pieces; i++ {
		r.Formula += " + l" + strconv.Itoa(i)
		r.Inputs = append(r.Inputs, pieceLength(i))
	}
	return r
}

// StopToeRule is the level of the toe while so many pieces are in the ground and
// the next is spliced on,
//
//	Z_t = Z_s - l1 - l2 - ...
//
// with the inputs Z_s, l1, l2 and so on, from the toe up. pieces >= 1.
func StopToeRule(pieces int) working.Rule {
	r := working.Rule{Key: "segment.joint.stopToe", Symbol: "Z_t", Formula: "Z_s", Dim: quantity.Lengths, Decimals: 4, Basis: "segment.joint.stopToe",
		Inputs: []working.Symbol{spliceLevel}}
	for i := 1; i <= pieces; i++ {
		r.Formula += " - l" + strconv.Itoa(i)
		r.Inputs = append(r.Inputs, pieceLength(i))
	}
	return r
}

func pieceLength(i int) working.Symbol {
	return working.Symbol{Name: "l" + strconv.Itoa(i), Dim: quantity.Lengths, Key: "pieceLength"}
}

// The rules of joints; those of [Check] are statements.
var (
	// SpliceLevelRule is where a splice is made. Inputs: Z_p, h_s.
	SpliceLevelRule = working.Rule{Key: "segment.joint.spliceLevel", Symbol: "Z_s", Formula: "Z_p + h_s",
		Inputs: []working.Symbol{
			{Name: "Z_p", Dim: quantity.Lengths, Key: "platformLevel"},
			{Name: "h_s", Dim: quantity.Lengths, Key: "spliceHeight"},
		}, Dim: quantity.Lengths, Decimals: 4, Basis: "segment.joint.stopToe"}
	// ClearRule keeps a joint away from cut-off. Inputs: Z_j, Z_c, x.
	ClearRule = proof(working.Rule{Key: "segment.joint.clear", Formula: "abs(Z_j - Z_c) >= x",
		Inputs: []working.Symbol{jointLevel, cutoffLevel, {Name: "x", Dim: quantity.Lengths, Key: "jointClear"}}})
	// LastRule keeps enough of the last piece below cut-off. Inputs: Z_c, Z_j, y.
	LastRule = proof(working.Rule{Key: "segment.joint.last", Formula: "Z_c - Z_j >= y",
		Inputs: []working.Symbol{cutoffLevel, jointLevel, {Name: "y", Dim: quantity.Lengths, Key: "lastLeast"}}})
	// BelowBarsRule has a joint below the bars. Inputs: Z_c, Z_j.
	BelowBarsRule = proof(working.Rule{Key: "segment.joint.belowBars", Formula: "Z_c > Z_j",
		Inputs: []working.Symbol{cutoffLevel, jointLevel}})
	// AboveBarsRule has a joint above the bars. Inputs: Z_j, Z_c, l_p.
	AboveBarsRule = proof(working.Rule{Key: "segment.joint.aboveBars", Formula: "Z_j - Z_c >= l_p",
		Inputs: []working.Symbol{jointLevel, cutoffLevel, {Name: "l_p", Dim: quantity.Lengths, Key: "barProjection"}}})
	// NoJointRule has a joint out of a stratum. Inputs: Z_j, Z_1, Z_2.
	NoJointRule = proof(working.Rule{Key: "segment.joint.noJoint", Formula: "abs(Z_j - (Z_1 + Z_2)/2) > (Z_1 - Z_2)/2",
		Inputs: []working.Symbol{jointLevel, stratumTop, stratumBottom}})
	// NoStopRule has the toe at a stop out of a stratum. Inputs: Z_t, Z_1, Z_2.
	NoStopRule = proof(working.Rule{Key: "segment.joint.noStop", Formula: "abs(Z_t - (Z_1 + Z_2)/2) > (Z_1 - Z_2)/2",
		Inputs: []working.Symbol{stopToe, stratumTop, stratumBottom}})
	// StaggerRule keeps a joint away from one of a neighbouring pile. Inputs: Z_j, Z_n, s.
	StaggerRule = proof(working.Rule{Key: "segment.joint.stagger", Formula: "abs(Z_j - Z_n) >= s",
		Inputs: []working.Symbol{jointLevel, {Name: "Z_n", Dim: quantity.Lengths, Key: "neighbourJoint"}, {Name: "s", Dim: quantity.Lengths, Key: "jointStagger"}}})
	// MostRule keeps the joints of a pile within a stated most. Inputs: N, n.
	MostRule = proof(working.Rule{Key: "segment.joint.most", Formula: "N - 1 <= n",
		Inputs: []working.Symbol{{Name: "N", Key: "pieces"}, {Name: "n", Key: "mostJoints"}}})
	// ShiftRule is the needed length with the founding level deeper by d. Inputs: L_n, d.
	ShiftRule = working.Rule{Key: "segment.shift", Symbol: "L_s", Formula: "L_n + d",
		Inputs: []working.Symbol{steppedNeed, {Name: "d", Dim: quantity.Lengths, Key: "deeper"}},
		Dim:    quantity.Lengths, Decimals: 4, Basis: "segment.shift"}
)

// proof makes a rule a proof by substitution, with the basis of its name.
func proof(r working.Rule) working.Rule {
	r.Basis, r.Statement = r.Key, true
	return r
}

// Check is one rule asked of one joint, as a proof by substitution.
type Check struct {
	Rule   working.Rule
	Joint  int       // from 0, from the toe up: the joint above piece Joint of the sequence
	Of     int       // number of the stratum or of the neighbour's joint; -1 where none is meant
	Inputs []float64 // in the order of the rule's
}

// Checks returns, joint by joint, every statement that the rules make about a
// make-up. All are true of what [JointRules.Best] returns.
func (r JointRules) Checks(stock []Piece, m Makeup) []Check {
	var list []Check
	for joint, height := range m.Heights(stock) {
		level := r.Level(height)
		ask := func(rule working.Rule, of int, inputs ...quantity.Length) {
			c := Check{Rule: rule, Joint: joint, Of: of}
			for _, v := range inputs {
				c.Inputs = append(c.Inputs, float64(v))
			}
			list = append(list, c)
		}
		below := float64((r.Cutoff-level)*stepsPerMetre) > boundary
		if r.Clear > 0 {
			ask(ClearRule, -1, level, r.Cutoff, r.Clear)
		}
		if r.Last > 0 && below {
			ask(LastRule, -1, r.Cutoff, level, r.Last)
		}
		switch {
		case r.Bars > 0 && below:
			ask(BelowBarsRule, -1, r.Cutoff, level)
		case r.Bars > 0:
			ask(AboveBarsRule, -1, level, r.Cutoff, r.Bars)
		}
		for i, s := range r.NoJoint {
			ask(NoJointRule, i, level, s.Top, s.Bottom)
		}
		for i, s := range r.NoStop {
			ask(NoStopRule, i, r.ToeAtStop(height), s.Top, s.Bottom)
		}
		if r.Stagger > 0 {
			for i, n := range r.Neighbours {
				ask(StaggerRule, i, level, n, r.Stagger)
			}
		}
	}
	return list
}
