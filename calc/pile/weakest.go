package pile

import (
	"strconv"

	"gaugewright/calc/quantity"
	"gaugewright/calc/working"
)

// What limits the load on a pile. calc/words holds the name of each under
// "symbol.pileLimit." and the key.
const (
	LimitMaker      = "maker"      // the maker's stated pressing load
	LimitSection    = "section"    // strength of the section
	LimitOffAxis    = "offAxis"    // grip off the axis
	LimitFreeLength = "freeLength" // buckling of the free length
	LimitSegment    = "segment"    // one segment, younger or stated to be weaker
	LimitSplice     = "splice"     // the splice
	LimitFollower   = "follower"   // the follower
	LimitGrip       = "grip"       // the maker's limit for the grip
)

// LimitKeys lists the keys of limits.
var LimitKeys = []string{LimitMaker, LimitSection, LimitOffAxis, LimitFreeLength, LimitSegment, LimitSplice, LimitFollower, LimitGrip}

// Limit is one load that a pile stands while it is pressed.
type Limit struct {
	Key  string         // one of [LimitKeys]; several limits may have the same
	Load quantity.Force // [kN], above zero
}

// Weakest returns the place of the least limit in the list; of equal ones the
// first. The list holds what is entered: a limit that is not known is left out
// by the caller, who says so. The error is an [*InputError]: an empty list, or
// a load not above zero.
func Weakest(list []Limit) (int, error) {
	if len(list) == 0 {
		return 0, &InputError{Code: "pile.noLimits", Text: "0", Allowed: "1", Example: "1800 kN"}
	}
	least := 0
	for i, l := range list {
		if err := force(limitSymbol(i), l.Load).positive(); err != nil {
			return 0, err
		}
		if l.Load < list[least].Load {
			least = i
		}
	}
	return least, nil
}

// WeakestRule is the formula of [Weakest] for a list, "min(N_1, N_2)"; its
// inputs are the loads in the order of the list.
func WeakestRule(list []Limit) working.Rule {
	r := working.Rule{Key: "pile.weakest", Symbol: "F_lim", Dim: quantity.Forces, Decimals: 1, Basis: "pile.weakest"}
	for i, l := range list {
		if i > 0 {
			r.Formula += ", "
		}
		r.Formula += limitSymbol(i)
		r.Inputs = append(r.Inputs, working.Symbol{Name: limitSymbol(i), Dim: quantity.Forces, Key: "pileLimit." + l.Key})
	}
	r.Formula = "min(" + r.Formula + ")"
	return r
}

func limitSymbol(i int) string { return "N_" + strconv.Itoa(i+1) }
