package segment

import "slices"

// solver makes up all piles of a job from one stock.
//
// # Choices
//
// Piles that ask for the same are a group. A group has a pool of patterns: the
// make-ups that are worth looking at, each with its cost and what it takes of
// the lines that are limited. A plan says how many piles of each group take which
// pattern. A piece that is taken beyond the count is missing and costs more than
// any plan can differ by: so the best plan misses the fewest pieces, and among
// those is the cheapest.
//
// # Bound
//
// Give each limited line a price per piece, whatever it is, zero or more. Then
//
//	sum over the piles of the cheapest make-up with these prices in it
//	- sum over the lines of price times count
//
// is not above the cost of any plan: a plan within the counts pays less for its
// pieces than is taken off. (Lagrange's multipliers; the highest such bound is
// that of the linear programme.) The make-up of each pile is searched exactly by
// [JointRules.Best]'s own search, so the bound holds for all make-ups, not only
// those in the pools. The prices are raised where more is taken than there is,
// lowered where less, in steps that shrink ([solver.climb]); what the search finds
// on the way fills the pools. As every cost is the sum of the needs, one joint a
// pile less, and whole multiples of the greatest common divisor of l_i + e_i + j,
// the bound is at last raised to the next cost that can be.
//
// # Plan
//
// Prices that give a high bound also say what is worth taking. A plan is built by
// climbing again and again, each time fixing the patterns that were chosen most of
// the way ([solver.dive]), then changed a few piles at a time while that makes it
// better ([solver.better]).
//
// # Proof
//
// A pattern that with the prices is dearer than the cheapest of its group by the
// distance of plan and bound cannot be in a better plan. If the rest can be listed,
// a search over all of it ([solver.prove]) ends with the best plan, or gives up
// after a fixed effort and leaves the plan, and a bound as high as it came.
//
// All costs, prices and bounds are whole tenths of a millimetre, and every effort
// is counted in steps: the same job has the same answer on every machine.
type solver struct {
	price  int64
	stock  []Piece // as the search of one pile may take it
	count  []int   // shared by all piles, [Unlimited] where not limited
	groups []*choice

	dearest int64 // more than any plan costs that misses nothing
	missing int64 // what a missing piece costs: more than dearest, where numbers allow
	step    int64 // costs of plans differ by multiples of this
	prices  []int64
	raw     int64 // the bound of these prices, before it is raised by the step
	bound   int64
	best    *plan
	piles   int
	states  int // of all searches of piles
	trials  int // steps of trials that are left
	random  uint64
}

const dearestMissing = int64(1) << 37 // keeps sums of 40 pieces of 5000 piles within int64

// newSolver returns a solver whose piles may take what stock says and share
// count. Where a group has no make-up of it, the error says why.
func newSolver(groups []*jobGroup, stock []Piece, count []int) (*solver, error) {
	s := &solver{stock: stock, count: count, price: groups[0].terms.JointPrice, prices: make([]int64, len(stock))}
	lines := available(stock)
	length, extra := int64(0), int64(0)
	for _, line := range lines {
		p := stock[line]
		length, extra = max(length, p.Length), max(extra, p.Extra)
		s.step = gcd(s.step, p.Length+p.Extra+s.price)
	}
	for _, g := range groups {
		c := &choice{jobGroup: g, at: map[string]int{},
			task: &task{g.need, g.terms, newPlacing(g.need, g.terms.MaxPieces, g.bans, g.begun, stock, lines)}}
		s.groups = append(s.groups, c)
		s.piles += len(g.piles)
		most := int64(g.terms.MaxPieces)
		s.dearest += int64(len(g.piles)) * (length + s.price*(most-1) + extra*most)
	}
	s.missing = min(s.dearest+1, dearestMissing)
	if len(lines) == 0 {
		return nil, fault("segment.stockEmpty")
	}
	_, err := s.search(s.prices)
	return s, err
}

// run finds the plan and the bound, with so many steps of trials. With patience
// false it ends where it is proven that every plan misses pieces.
func (s *solver) run(trials int, patience bool) {
	if s.trials = trials; len(s.groups) > mostProven {
		s.trials /= 4 // each takes longer and no proof follows
	}
	s.raise(s.prices)
	cheapest := s.empty()
	for g, c := range s.groups {
		s.assign(cheapest, g, c.cheapest(s.prices), len(c.piles))
	}
	s.offer(cheapest)
	if !patience && s.short() {
		return
	}
	s.ascend(patience)
	if s.closed() || !patience && s.lacking() {
		return
	}
	s.widen(max(leastPool, min(mostPool, patternEffort/len(s.groups))))
	s.offer(s.dive())
	s.better()
	if !s.closed() && len(s.groups) <= mostProven {
		s.prove()
	}
}

// short says whether all pieces together are so much shorter than all needs that
// every plan misses pieces. Dear prices by length prove it at once, which step by
// step takes long.
func (s *solver) short() bool {
	sum, longest := int64(0), int64(0)
	for line, p := range s.stock {
		if s.count[line] == Unlimited {
			return false
		}
		sum, longest = sum+int64(s.count[line])*p.Length, max(longest, p.Length)
	}
	for _, c := range s.groups {
		sum -= int64(len(c.piles)) * c.need
	}
	if sum >= 0 {
		return false
	}
	prices := make([]int64, len(s.stock))
	for line, p := range s.stock {
		prices[line] = s.missing * p.Length / longest
	}
	if _, err := s.search(prices); err == nil {
		s.raise(prices)
	}
	return s.lacking()
}

// ascend raises the bound. Pools know only what has been searched, so the bound
// over them is too high away from the prices that were searched: each round stays
// within a box around the best prices, searches what it finds there, and makes
// the box larger or smaller as the bound was well foretold or not.
func (s *solver) ascend(patience bool) {
	box, stale, rounds := s.box(), 0, max(leastRounds, min(mostRounds, searchEffort/len(s.groups)))
	for round := 0; round < rounds && stale < mostStale && s.states < mostStates; round++ {
		if s.closed() || !patience && s.lacking() {
			return
		}
		steps := max(leastSteps, min(mostClimb, climbEffort/s.patterns()))
		prices, foretold, _ := s.climb(s.demand(), s.count, s.prices, box, steps)
		before := s.raw
		fresh, err := s.search(prices)
		if err != nil {
			return // not proven: the bound stays as it is
		}
		s.raise(prices)
		gain, hoped := s.raw-before, foretold-before
		switch {
		case 2*gain > hoped:
			box, stale = min(2*box, s.missing), 0
		case gain > 0:
			stale = 0
		case fresh == 0:
			box = max(1, box/2)
			stale++
		case round%3 == 0:
			box = max(1, box/2)
		}
	}
}

// patterns is how many there are in all pools.
func (s *solver) patterns() (n int) {
	for _, c := range s.groups {
		n += len(c.pool)
	}
	return n
}

// box is how far prices go at first: an eighth of the longest piece.
func (s *solver) box() int64 {
	longest := int64(0)
	for _, p := range s.stock {
		longest = max(longest, p.Length)
	}
	return longest/8 + 1
}

// lacking says whether it is proven that every plan misses pieces.
func (s *solver) lacking() bool { return s.bound > s.dearest }

// closed says whether nothing better than the plan at hand can be.
func (s *solver) closed() bool { return s.best != nil && s.value(s.best) <= s.bound }

// The effort of each part, so that 200 piles that are all different take some
// tenths of a second, and 5000 not a hundred times as long.
const (
	searchEffort  = 7000    // make-ups of a pile that are searched to raise the bound
	mostStates    = 1500000 // of these searches
	leastRounds   = 3       // of all piles, whatever the effort says
	mostRounds    = 300
	mostStale     = 6      // rounds that find nothing
	climbEffort   = 200000 // patterns looked at in one climb
	leastSteps    = 40     // of a climb
	mostClimb     = 1000
	patternEffort = 12000 // patterns in all pools
	leastPool     = 6     // in one
	mostPool      = 60
	mostProven    = 500 // groups for which a proof is tried
)

// search finds the cheapest make-up of every group with these prices, adds it to
// the pool, and returns how many were new. The error is of a group that has none,
// or whose cheapest could not be proven.
func (s *solver) search(prices []int64) (fresh int, err error) {
	stock := s.priced(prices)
	for _, c := range s.groups {
		m, err := c.task.solve(stock, c.terms)
		if err != nil {
			return fresh, err
		}
		c.low = m.Cost
		s.states += m.Steps
		before := len(c.pool)
		s.add(c, m.Sequence)
		fresh += len(c.pool) - before
	}
	return fresh, nil
}

// priced is the stock with prices on its pieces.
func (s *solver) priced(prices []int64) []Piece {
	stock := slices.Clone(s.stock)
	for i := range stock {
		stock[i].Extra += prices[i]
	}
	return stock
}

func (s *solver) demand() []int {
	d := make([]int, len(s.groups))
	for i, c := range s.groups {
		d[i] = len(c.piles)
	}
	return d
}

// raise takes the bound that the last search with these prices gives, where it
// is higher than the one at hand.
func (s *solver) raise(prices []int64) {
	raw := int64(0)
	for _, c := range s.groups {
		n := int64(len(c.piles))
		raw += n * c.low
	}
	for line, price := range prices {
		if price > 0 {
			raw -= price * int64(s.count[line])
		}
	}
	if s.best == nil || raw > s.raw {
		s.raw, s.bound = raw, s.next(raw)
		copy(s.prices, prices)
	}
}

// next is the least cost that can be and is not below the bound: whole, modulo the
// step. A missing piece costs no whole number of steps, so only plans that miss
// nothing are meant.
func (s *solver) next(bound int64) int64 {
	rest := bound
	for _, c := range s.groups {
		rest += int64(len(c.piles)) * (c.need + s.price)
	}
	if rest %= s.step; rest != 0 && bound <= s.dearest {
		if rest < 0 {
			rest += s.step
		}
		bound += s.step - rest
	}
	return bound
}
