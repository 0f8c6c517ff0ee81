package segment

import "gaugewright/calc/quantity"

// JobPile is one pile of an order list. A pile that is begun is its rest: the need
// less what is in the ground, the pieces that may still come, and the rules of
// [JointRules.Pressed]. The joints of what is in the ground belong to
// Rules.Neighbours of the piles beside it.
type JobPile struct {
	Need      int64 // [0.1 mm]
	MaxPieces int   // 1 to [MostPieces]
	Rules     JointRules
	// Beside holds the numbers of neighbouring piles of the list: their joints
	// count for Rules.Stagger as those of Rules.Neighbours do. Stated on one
	// side is enough.
	Beside []int
	// Stage says when the pile is pressed: after all piles of earlier stages are
	// cut. Saw is the height of its saw cut above the toe [0.1 mm], 0 where it is
	// not known. Both are asked only where off-cuts are used again ([Reuse]).
	Stage int
	Saw   int64
}

// JobTerms are what an order list is judged by.
type JobTerms struct {
	JointPrice int64          // what one joint is worth as metres of pile, 0 to 100 km [0.1 mm]
	Spares     quantity.Ratio // pieces ordered beyond those taken, of each length, 0 to 1
	Reuse      Reuse
}

// Order is the order list of a job.
type Order struct {
	Piles []OrderPile // in the order of the piles
	Lines []OrderLine // in the order of the stock
	// Stock is the stock, followed by the off-cuts that are used again, a line
	// each: what the make-ups count in.
	Stock []Piece

	Pieces int   // of stock that the piles take
	Total  int64 // sum of their lengths
	OffCut int64 // Total less what all piles need
	Joints int
	Extra  int64 // sum of the extra costs
	Cost   int64 // OffCut + JointPrice Joints + Extra
	// Bound is a cost below which no make-ups of these piles from this stock, with
	// what is missing added, can come. Where it equals Cost + Saved the order is
	// the cheapest there is, off-cuts used again left aside.
	Bound int64

	// Missing is how many pieces the stock is short of; Lines says of which. No
	// order was found that needs less. Lacking says that none without is to be
	// found: it is proven.
	Missing int
	Lacking bool

	Reused []Reused // off-cuts used again
	Saved  int64    // what they take off the cost
	Close  []int    // piles whose joints could not be kept away from a neighbour's
}

// OrderPile is a pile of the order list: its make-up by the lines of
// [Order.Stock], or why it has none.
type OrderPile struct {
	Makeup Makeup
	Err    error
}

// OrderLine is what the job takes of one line of stock.
type OrderLine struct {
	Taken   int // by the piles
	Spares  int
	Ordered int // Taken + Spares
	Missing int // of Taken, beyond the count
	Short   int // of Ordered, beyond the count
}

// Gap returns how far the cost may lie above the least, as a part of it:
// (K - B)/K with the cost K before off-cuts are used again and the bound B.
func (o Order) Gap() quantity.Ratio {
	cost := o.Cost + o.Saved
	if cost <= o.Bound {
		return 0
	}
	return quantity.Ratio(float64(cost-o.Bound) / float64(cost))
}

// MostPiles is how many piles an order list takes.
const MostPiles = 5000

// Proven says whether no cheaper order of this stock exists, off-cuts used again
// left aside.
func (o Order) Proven() bool { return o.Cost+o.Saved <= o.Bound }

// OrderList makes up all piles of a job from one stock at the least total cost,
//
//	K = sum over the piles of (L - L_need) + j (N - 1) + sum of n_i e_i
//
// as for one pile ([JointRules.Best]), with the counts of the stock shared.
//
// Where the counts bind no pile, each gets its own best make-up, and the order is
// the cheapest. Where they do, it is searched for (see [solver]) and stands
// beside a bound that is proven; [Order.Gap] says how far they are apart, and
// [Order.Proven] that they are not. Where the stock cannot do it, the order says of
// what it is short, and is made for a stock that has as many pieces more.
//
// After that the pieces of each pile are laid so that their joints keep away
// from those of piles beside it, in the order of the piles; a pile whose pieces
// cannot is made up anew from what is left, and where nothing helps it is named
// in Close. Off-cuts are used again last, where the terms ask for it.
//
// It is planned anew, when a piece was used or broken, by asking again: with the
// stock that is left, without the piles that are finished, and of those begun the
// rest. Nothing hangs on an earlier plan. An off-cut at hand is a line of the stock
// with one piece in the role [EitherEnd].
//
// A pile that has no make-up of these lengths, however many there were of each,
// has its error in Piles and is left out. The error of the whole is an
// [*InputError] on stock or terms. The effort is counted in steps, so the answer is
// the same everywhere. Source: our own choice of the cost.
func OrderList(piles []JobPile, stock []Piece, terms JobTerms) (Order, error) {
	if err := checkJob(piles, stock, terms); err != nil {
		return Order{}, err
	}
	o := Order{Piles: make([]OrderPile, len(piles)), Lines: make([]OrderLine, len(stock)), Stock: append([]Piece(nil), stock...)}
	lines := mergeLines(stock)
	groups := possible(piles, groupPiles(piles, terms.JointPrice, o.Piles), stock, o.Piles)
	plan := solveJob(piles, groups, lines.stock, o.Piles)
	o.Bound, o.Lacking = plan.bound, plan.lacking

	y := newYard(piles, lines.stock, plan.order, terms)
	o.Close = y.stagger()
	if terms.Reuse.On {
		o.Reused, o.Saved = y.reuse(len(stock))
		for _, r := range o.Reused {
			o.Stock = append(o.Stock, Piece{Length: r.Length, Count: 1, Role: EitherEnd})
		}
	}
	y.hand(o.Piles)
	lines.allot(o.Piles, len(stock)+len(o.Reused))
	o.sum(stock, terms)
	return o, nil
}

func checkJob(piles []JobPile, stock []Piece, terms JobTerms) error {
	outside := func(code string, value, limit float64) error {
		return &InputError{Code: code, Line: -1, Value: value, Limit: limit}
	}
	switch spares := float64(terms.Spares); {
	case len(piles) > MostPiles:
		return outside("segment.order.tooMany", float64(len(piles)), MostPiles)
	case !(spares >= 0 && spares <= 1):
		return outside("segment.order.spares", spares*100, 100)
	case terms.Reuse.Least < 0 || terms.Reuse.Loss < 0:
		return outside("segment.negative", float64(Metres(min(terms.Reuse.Least, terms.Reuse.Loss))), 0)
	}
	for i, p := range piles {
		for _, b := range p.Beside {
			if b < 0 || b >= len(piles) || b == i {
				return outside("segment.order.beside", float64(b), float64(len(piles)-1))
			}
		}
	}
	// Stock and price are checked once, with a pile that is good. A stock of
	// which nothing is there is short of everything, no error.
	err := check(1, stock, Terms{JointPrice: terms.JointPrice, MaxPieces: 1})
	if is(err, "segment.stockEmpty") && len(stock) > 0 {
		return nil
	}
	return err
}

// sum writes what the make-ups come to.
func (o *Order) sum(stock []Piece, terms JobTerms) {
	for _, p := range o.Piles {
		if p.Err != nil {
			continue
		}
		o.OffCut += p.Makeup.OffCut
		o.Joints += p.Makeup.Pieces - 1
		o.Extra += p.Makeup.Extra
		for line, n := range p.Makeup.Counts {
			if line < len(stock) {
				o.Lines[line].Taken += n
			}
		}
	}
	for _, r := range o.Reused {
		o.OffCut -= r.Length // it is bought once
	}
	o.Cost = o.OffCut + terms.JointPrice*int64(o.Joints) + o.Extra
	for i, p := range stock {
		l := &o.Lines[i]
		l.Ordered = Ordered(l.Taken, terms.Spares)
		l.Spares = l.Ordered - l.Taken
		o.Pieces += l.Taken
		o.Total += int64(l.Taken) * p.Length
		if p.Count != Unlimited {
			l.Missing, l.Short = max(0, l.Taken-p.Count), max(0, l.Ordered-p.Count)
		}
		o.Missing += l.Missing
	}
}

// Ordered returns how many pieces to order of which so many are taken:
//
//	n_o = roundup(n (1 + s), 1)
//
// n pieces taken, s share of spares. Rounded up for each length by itself.
func Ordered(taken int, spares quantity.Ratio) int {
	return int(quantity.RoundUp(float64(taken)*float64(1+spares), 1))
}
