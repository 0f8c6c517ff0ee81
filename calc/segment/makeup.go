package segment

// Limits of what [Best] handles. Our own choices: far above a site's needs, low
// enough that no sum leaves int64.
const (
	MostPieces    = 40         // pieces in one pile
	MostLines     = 60         // lines of stock
	DefaultPieces = 20         // a limit on pieces for a job that states none
	DefaultJoint  = 10000      // price of a joint where none is stated: 1.0 m of pile [0.1 mm]
	longestPiece  = 1000000    // 100 m
	longestNeed   = 10000000   // 1 km
	highestPrice  = 1000000000 // 100 km of pile
	// mostSteps bounds the search, and the laying of pieces in it: some tenths of a second in a browser on a
	// desk. The tests' sweep of awkward lengths stays ten times below it.
	mostSteps = 3000000
)

// Unlimited is the count of a stock line that can be ordered at will.
const Unlimited = -1

// Piece is a line of the stock. All amounts are in tenths of a millimetre.
type Piece struct {
	Length int64 // 1 to 100 m
	Count  int   // pieces available, 0 or more, or [Unlimited]
	Extra  int64 // extra cost of each piece as metres of pile, 0 to 100 km; usually 0
	Role   Role  // where in the pile it may stand
}

// Terms are what the make-up is judged by.
type Terms struct {
	JointPrice int64 // what one joint is worth as metres of pile, 0 to 100 km [0.1 mm]
	MaxPieces  int   // 1 to [MostPieces]
}

// Makeup is a make-up of one pile. Lengths and costs are in tenths of a
// millimetre.
type Makeup struct {
	Counts []int // pieces of each stock line, in the order of the stock
	// Sequence holds the stock line of each piece, from the toe up.
	Sequence []int

	Pieces int   // sum of Counts; joints are one less
	Total  int64 // sum of the lengths
	OffCut int64 // Total - need, never negative
	Extra  int64 // sum of the extra costs
	Cost   int64 // OffCut + JointPrice (Pieces - 1) + Extra
	Steps  int   // how many states the search looked at; for measuring
}

// Best returns the cheapest make-up whose length is at least need [0.1 mm], with
// joints at any level: [JointRules.Best] without rules.
func Best(need int64, stock []Piece, terms Terms) (Makeup, error) {
	return JointRules{}.Best(need, stock, terms)
}

// Alternatives returns [Best] and the make-ups that other prices would give:
// [JointRules.Alternatives] without rules.
func Alternatives(need int64, stock []Piece, terms Terms) (Choices, error) {
	return JointRules{}.Alternatives(need, stock, terms)
}

// Best returns the cheapest make-up that keeps the rules and whose length is at
// least need [0.1 mm].
//
//	cost = (L - L_need) + j (N - 1) + sum of n_i e_i
//
// L sum of the lengths, N number of pieces, j price of a joint, e_i extra cost
// of a piece. Among make-ups of equal cost it takes the one with the fewest
// joints; among those, the one that takes more pieces of the first stock line;
// among those, more of the second, and so on: the lexicographically largest
// Counts in the order of the stock. Of the orders of these pieces that keep the
// rules it takes the one that, from the toe up, lays the earliest stock line
// first. The answer is therefore unique. Every joint lies below the needed head:
// a piece above it would not be pressed.
//
// The optimum is proven: the search leaves out a branch only when its integer
// lower bound shows that nothing better is in it (see [search]).
//
// The error is an [*InputError]: need not above zero, no stock, a number out of
// range, no sum of all pieces reaches the need (with the longest reachable),
// more pieces needed than allowed (with how many), the rule that stops every
// make-up (with the best make-up without it, see [Stop]), or the effort limit.
// Source: our own choice of the cost; without rules the problem is the bounded
// covering knapsack. Not covered: see the package comment.
func (r JointRules) Best(need int64, stock []Piece, terms Terms) (Makeup, error) {
	t, err := r.task(need, stock, terms)
	if err != nil {
		return Makeup{}, err
	}
	best, err := t.solve(stock, terms)
	if stopped(err) {
		return Makeup{}, r.stops(need, stock, terms)
	}
	return best, err
}

// Choices are the cheapest make-up and two others to set beside it. One of the
// others that could not be proven within the effort has no pieces; the best
// always has.
type Choices struct {
	Best         Makeup // by the stated terms
	FewestJoints Makeup // fewest pieces; among those the least off-cut and extra cost
	LeastOffCut  Makeup // least off-cut whatever joints and pieces cost; among those the fewest pieces
}

// Alternatives returns the best make-up and those that other prices would give:
// a joint dearer than everything else, and a joint and every extra cost free.
// All keep the rules. Ties are broken as in Best. Cost and Extra of each are
// counted by the stated terms, so that the three can be compared. Errors as for
// Best.
func (r JointRules) Alternatives(need int64, stock []Piece, terms Terms) (Choices, error) {
	t, err := r.task(need, stock, terms)
	if err != nil {
		return Choices{}, err
	}
	best, err := t.solve(stock, terms)
	if stopped(err) {
		err = r.stops(need, stock, terms)
	}
	if err != nil {
		return Choices{}, err
	}
	// No two make-ups of one pile differ in length and extra cost by as much
	// as this: so many pieces, each as long and as dear as the dearest.
	dear := int64(0)
	free := make([]Piece, len(stock))
	for i, p := range stock {
		dear = max(dear, p.Length+p.Extra)
		free[i] = p
		free[i].Extra = 0
	}
	few, err := t.solve(stock, Terms{JointPrice: dear*int64(terms.MaxPieces) + 1, MaxPieces: terms.MaxPieces})
	if err != nil && !unproven(err) {
		return Choices{}, err
	}
	least, err := t.solve(free, Terms{MaxPieces: terms.MaxPieces})
	if err != nil && !unproven(err) {
		return Choices{}, err
	}
	for i, n := range least.Counts {
		least.Extra += int64(n) * stock[i].Extra
	}
	least.Cost += least.Extra
	return Choices{Best: best, FewestJoints: few, LeastOffCut: least}, nil
}

// task is a pile to make up: what does not change with prices.
type task struct {
	need  int64
	terms Terms // as asked: costs are counted by them
	place *placing
}

func (r JointRules) task(need int64, stock []Piece, terms Terms) (*task, error) {
	if err := check(need, stock, terms); err != nil {
		return nil, err
	}
	bans, err := r.bans()
	if err != nil {
		return nil, err
	}
	return &task{need, terms, newPlacing(need, terms.MaxPieces, bans, r.Begun, stock, available(stock))}, nil
}

// solve searches by the terms: first without rules, which is quick, and with
// them only where the make-up found so has no order that keeps them.
func (t *task) solve(stock []Piece, by Terms) (Makeup, error) {
	best, err := solve(t.need, stock, by, t.terms, nil, longSearch)
	if err != nil || t.place.free || t.place.arrange(&best, stock) {
		return best, err
	}
	return solve(t.need, stock, by, t.terms, t.place, longSearch)
}

func unproven(err error) bool { return is(err, "segment.effort") }

func stopped(err error) bool { return is(err, "segment.stopped.several") }

func is(err error, code string) bool {
	e, ok := err.(*InputError)
	return ok && e.Code == code
}

// Same says whether two make-ups take the same pieces.
func (m Makeup) Same(o Makeup) bool {
	if len(m.Counts) != len(o.Counts) {
		return false
	}
	for i, n := range m.Counts {
		if n != o.Counts[i] {
			return false
		}
	}
	return true
}

func check(need int64, stock []Piece, terms Terms) error {
	outside := func(code string, line int, value, limit float64) error {
		return &InputError{Code: code, Line: line, Value: value, Limit: limit}
	}
	metres := func(tenths int64) float64 { return float64(Metres(tenths)) }
	switch {
	case need <= 0:
		return outside("segment.need", -1, metres(need), 0)
	case need > longestNeed:
		return &InputError{Code: "segment.tooLong", Symbol: "L_need", Line: -1, Value: metres(need), Limit: metres(longestNeed)}
	case terms.JointPrice < 0 || terms.JointPrice > highestPrice:
		return outside("segment.jointPrice", -1, metres(terms.JointPrice), metres(highestPrice))
	case terms.MaxPieces < 1 || terms.MaxPieces > MostPieces:
		return outside("segment.maxPieces", -1, float64(terms.MaxPieces), MostPieces)
	case len(stock) > MostLines:
		return outside("segment.stockTooMany", -1, float64(len(stock)), MostLines)
	}
	available := false
	for i, p := range stock {
		switch {
		case p.Length <= 0 || p.Length > longestPiece:
			return outside("segment.pieceLength", i, metres(p.Length), metres(longestPiece))
		case p.Count < Unlimited:
			return outside("segment.pieceCount", i, float64(p.Count), 0)
		case p.Role > lastRole:
			return outside("segment.role", i, float64(p.Role), float64(lastRole))
		case p.Extra < 0 || p.Extra > highestPrice:
			return outside("segment.extra", i, metres(p.Extra), metres(highestPrice))
		}
		available = available || p.Count != 0
	}
	if !available {
		return fault("segment.stockEmpty")
	}
	return nil
}
