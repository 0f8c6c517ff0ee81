package segment

import "slices"

// yard lays out what a plan has given to each pile: in which order the pieces
// stand, so that joints keep away from those of piles beside, and which off-cuts
// take the place of pieces.
type yard struct {
	piles  []JobPile
	terms  JobTerms
	stock  []Piece // shared lines, and after them the off-cuts used again
	left   []int   // of each shared line: what no pile has taken
	order  [][]int // of each pile, its lines from the toe up; nil: it has none
	beside [][]int // piles beside each, stated on either side
	effort int     // left for trying off-cuts
}

func newYard(piles []JobPile, stock []Piece, order [][]int, terms JobTerms) *yard {
	y := &yard{piles: piles, terms: terms, stock: slices.Clone(stock), order: order, beside: make([][]int, len(piles)), effort: reuseEffort}
	for _, p := range stock {
		y.left = append(y.left, p.Count)
	}
	for i, p := range piles {
		y.move(order[i], -1)
		for _, j := range p.Beside {
			if !slices.Contains(y.beside[i], j) {
				y.beside[i], y.beside[j] = append(y.beside[i], j), append(y.beside[j], i)
			}
		}
	}
	return y
}

// move takes the pieces of a pile, n -1, or puts them back, n 1.
func (y *yard) move(order []int, n int) {
	for _, line := range order {
		if line < len(y.left) && y.stock[line].Count != Unlimited {
			y.left[line] += n
		}
	}
}

// stagger puts the pieces of piles beside one another in orders that keep their
// joints apart, pile by pile. Where the pieces of a pile cannot, it is made up
// anew of what is left. It returns the piles where that helps neither.
func (y *yard) stagger() (close []int) {
	for i, order := range y.order {
		r, asked := y.rules(i, func(j int) bool { return j < i })
		if order == nil || !asked {
			continue
		}
		if laid := y.lay(r, i); laid != nil {
			y.order[i] = laid
			continue
		}
		y.move(order, 1)
		m, err := r.Best(y.piles[i].Need, y.rest(), y.own(i))
		if err != nil {
			close = append(close, i)
		} else {
			y.order[i] = m.Sequence
		}
		y.move(y.order[i], -1)
	}
	return close
}

func (y *yard) own(i int) Terms {
	return Terms{JointPrice: y.terms.JointPrice, MaxPieces: y.piles[i].MaxPieces}
}

// rules are those of a pile with the joints of the piles beside it that are laid,
// and whether any are.
func (y *yard) rules(i int, laid func(int) bool) (r JointRules, asked bool) {
	r = y.piles[i].Rules
	r.Neighbours = slices.Clone(r.Neighbours)
	for _, j := range y.beside[i] {
		if y.order[j] == nil || !laid(j) {
			continue
		}
		r.Stagger = max(r.Stagger, y.piles[j].Rules.Stagger)
		for _, height := range (Makeup{Sequence: y.order[j]}).Heights(y.stock) {
			r.Neighbours = append(r.Neighbours, y.piles[j].Rules.Level(height))
			asked = true
		}
	}
	return r, asked && r.Stagger > 0
}

// rest is the stock of which only what is left can be taken.
func (y *yard) rest() []Piece {
	rest := slices.Clone(y.stock[:len(y.left)])
	for line := range rest {
		if rest[line].Count != Unlimited {
			rest[line].Count = max(0, y.left[line])
		}
	}
	return rest
}

// lay puts the pieces of a pile in the first order that keeps the rules, nil
// where there is none.
func (y *yard) lay(r JointRules, i int) []int {
	stock, lines, counts := slices.Clone(y.stock), make([]int, len(y.stock)), make([]int, len(y.stock))
	for line := range stock {
		stock[line].Count, lines[line] = Unlimited, line // a missing piece is laid too
	}
	for _, line := range y.order[i] {
		counts[line]++
	}
	t, err := r.task(y.piles[i].Need, stock, y.own(i))
	if err != nil || !t.place.fits(counts, len(y.order[i])) {
		return nil
	}
	return t.place.lines(lines)
}

// makeup is what a pile is made of; its counts are written when the lines of the
// stock are allotted.
func (y *yard) makeup(i int) Makeup {
	m := Makeup{Sequence: slices.Clone(y.order[i]), Pieces: len(y.order[i])}
	for _, line := range m.Sequence {
		m.Total += y.stock[line].Length
		m.Extra += y.stock[line].Extra
	}
	m.OffCut = m.Total - y.piles[i].Need
	m.Cost = m.OffCut + y.terms.JointPrice*int64(m.Pieces-1) + m.Extra
	return m
}

// hand writes the make-ups of all piles that have one.
func (y *yard) hand(out []OrderPile) {
	for i, order := range y.order {
		if order != nil {
			out[i].Makeup = y.makeup(i)
		}
	}
}
