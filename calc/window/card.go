package window

import (
	"slices"

	"gaugewright/calc/quantity"
)

// MostCardRows is how many rows stand on one page of a cabin card so that it
// can be read at arm's length. Our own choice.
const MostCardRows = 60

// CardFrom is the part of the full scale at which a cabin card begins: below a
// quarter a dial is read too coarsely to press by (basis "gauge.low").
const CardFrom = 0.25

// CardRow is one reading of a cabin card.
type CardRow struct {
	Reading    quantity.Pressure
	Set, Never bool // this is the set reading, the never-exceed reading
}

// CardRows lists the readings of a cabin card, rising: whole multiples of a
// division from a quarter of the full scale to the never-exceed reading, with
// the set and the never-exceed reading always among them. It ends there: a
// card holds no reading that must not be seen.
//
// The multiple k is the smallest of 1, 2, 5, 10, 20, 50, ... that gives at most
// [MostCardRows] rows. division > 0, full > 0, 0 < set <= never, all [kPa], set
// and never whole divisions; else there is no card and the list is empty. A
// set below a quarter of the full scale begins the card with its own row.
func CardRows(division, full, set, never quantity.Pressure) []CardRow {
	if !(division > 0 && full > 0 && set > 0 && set <= never) {
		return nil
	}
	last := quantity.Divisions(float64(never), float64(division), false)
	at := quantity.Divisions(float64(set), float64(division), false)
	from := quantity.Divisions(CardFrom*float64(full), float64(division), true)
	for k := 1.0; ; k = coarser(k) {
		list := []float64{at}
		for n := max(1, quantity.Divisions(from, k, true)) * k; n < last && len(list) <= MostCardRows; n += k {
			if n != at {
				list = append(list, n)
			}
		}
		if last != at {
			list = append(list, last)
		}
		if len(list) > MostCardRows {
			continue
		}
		slices.Sort(list)
		rows := make([]CardRow, len(list))
		for i, n := range list {
			rows[i] = CardRow{Reading: quantity.Pressure(n * float64(division)), Set: n == at, Never: n == last}
		}
		return rows
	}
}

// coarser is the next of 1, 2, 5, 10, 20, 50, ...
func coarser(k float64) float64 {
	for p := 1.0; ; p *= 10 {
		switch k {
		case p:
			return 2 * p
		case 2 * p:
			return 5 * p
		case 5 * p:
			return 10 * p
		}
	}
}
