package pile

import (
	"strings"
)

// timberClasses are the classes with figures in calc/basis.
var timberClasses = []string{"C16", "C24", "C30", "D30", "D40"}

// TimberFigures returns the ids in calc/basis of the characteristic strength
// in compression along the grain, f_c,0,k, and of the stiffness E_0,05 of a
// strength class: C16, C24, C30, D30 or D40, in any case of letters. The error
// is an [*InputError] with the code "pile.timberUnknown".
// Source: EN 338:2009, Table 1. The classes are of sawn timber; of round piles
// they are used by analogy, and a grade stated for poles is the better figure.
// The strength is of timber at 12 per cent moisture under a test of minutes:
// neither wet timber nor the length of the load is allowed for here.
func TimberFigures(class string) (strength, stiffness string, err error) {
	name := plain(class)
	for _, known := range timberClasses {
		if known == name {
			return "timber." + known + ".strength", "timber." + known + ".stiffness", nil
		}
	}
	return "", "", &InputError{Code: "pile.timberUnknown", Text: class, Allowed: strings.Join(timberClasses, ", "), Example: "C24"}
}
