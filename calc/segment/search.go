package segment

import (
	"slices"
	"sort"
)

// search finds the cheapest make-up of exactly k pieces, for one k after the
// other.
//
// # Order
//
// With k fixed the joints cost the same, so the least sum of l_i + e_i over the
// k pieces is sought, with lengths summing to at least the need. k grows from
// the fewest pieces that can reach the need, so that of two make-ups of equal
// cost the one with fewer joints is met first. For one k, the stock lines are
// decided in the order of the stock, each from its highest count down: make-ups
// are met in lexicographically falling order of counts. Only a make-up that is
// strictly cheaper replaces the one at hand. So the first of equals stays,
// which is the order that [Best] promises.
//
// # Bound
//
// A state is (i, k, r): lines i and later are open, exactly k pieces are to be
// taken from them, and r of length is missing (r may be negative). Every way on
// costs at least
//
//	low(i,k,r) + extra(i,k,r)
//
// low: the k pieces sum to at least r, and to at least the k shortest pieces
// that the open lines hold. With g the greatest common divisor of the
// differences between the open lengths, every open length is l = l_n + g z with
// z whole, so every sum of k of them is k l_n modulo g: low is the least number
// that is not below those two and has that remainder.
//
// extra: the k pieces cost at least the k smallest extra costs of the open
// lines; and at least the fractional cover of r, which fills r with the lines
// in rising order of e/l, the last one in part (the linear relaxation without
// the count of pieces), rounded up, as extra costs are whole. The larger of the
// two.
//
// Both parts hold by themselves and concern different parts of the cost, so
// their sum holds. All of it is integer arithmetic. A branch is left when the
// bound plus what is already spent is not below the cost at hand, or when its
// k longest pieces do not reach r.
//
// The last two open lines need no search: with a pieces of one and k - a of the
// other the cost is linear in a, so the best a is at an end of its range.
//
// # Equal lines
//
// Of two lines with the same length, the later one with no smaller extra cost
// is used only when the earlier one is used up: an exchange of one piece would
// otherwise give a make-up that is cheaper or comes earlier in the order.
//
// # States met again
//
// What a state (i, k, r) costs at least does not depend on how it was reached.
// When all below it is searched, nothing in it was below the cost at hand: that
// minus what was spent before is a bound for the next visit, kept in a table of
// fixed size where a newer state overwrites an older one. The table is made
// only when a search turns out to be long.
//
// The rule of equal lines closes a line to some ways of reaching a state and
// not to others; the bound holds for all of them none the less. A make-up that
// the rule leaves out can be exchanged for one that is no dearer and comes
// earlier in the order, so the cost at hand is already no higher than it.
//
// # Rules on places and joints
//
// With rules the same search runs, but a make-up counts only when its pieces
// have an order that keeps them (see [placing]). The bounds still hold, as the
// rules only take make-ups away. Three things are added:
//
//   - The need of a k is raised to the least sum that k pieces can reach at all
//     without a joint where none may lie (see [reach]), and sums that cannot be
//     reached are left out before an order is looked for.
//   - The limit begins just above the bound and grows, doubling its distance,
//     until something is found: make-ups far above the cheapest are not met.
//   - A make-up without an order was cheap and yet not taken: the table of
//     states met keeps the least of those too, and the pieces that need an end
//     of the pile are part of the state.
//
// # Several k
//
// Nothing cheaper is left at k or any larger number once j (k-1) + (k shortest
// pieces, at least the need) + (k smallest extra costs) reaches the cost at
// hand, as all three grow with k.
type search struct {
	n      int
	length []int64
	extra  []int64
	count  []int // available, at most the limit on pieces
	before []int // an earlier line that must be used up first, or -1

	row      int     // length of a row of the tables: the limit on pieces + 1
	open     []int   // [i]: pieces available from lines i and later, at most row-1
	shortest []int64 // [i*row+k]: sum of the k shortest of lines i and later
	longest  []int64 // the same of the k longest
	cheapest []int64 // the same of the k smallest extra costs
	grid     []int64 // [i]: greatest common divisor of differences of lengths from i on
	byRatio  []int   // lines in rising order of e/l; nil without extra costs

	at      []int // counts of the state at hand
	best    []int // counts of the cheapest make-up so far
	limit   int64 // a make-up must cost less than this in length and extras
	found   bool  // in this k
	steps   int
	effort  int // states after which it gives up
	stopped bool

	place  *placing // nil without rules
	pieces int      // k of the search at hand, and its raised need
	target int64
	ends   ends  // used by the state at hand
	near   int64 // least cost of the make-ups below the state at hand that had no order
	order  []int // of the cheapest make-up so far
	// take, where it is given, is called with every make-up below the limit, which then stays.
	take func(order []int, cost int64)

	seen       []met // nil until the search is long
	tableAfter int   // states after which it is made
}

// met is a searched state and what it costs at least.
type met struct{ state, bound int64 }

const (
	longSearch = 2000 // states after which the table is made
	tableBits  = 16   // of 16 bytes each: 1 MB
)

// slot returns the number of a state and its place in the table, nil where the
// table is not used.
func (s *search) slot(i, k int, r int64) (int64, *met) {
	// i and k stay below 64. Nothing has the number 0, which an empty place
	// holds: at line 0 at least one piece is open.
	state := r<<12 | int64(i)<<6 | int64(k)
	if s.place != nil {
		// Which sums can be reached hangs on the number of all pieces.
		e := s.ends
		state = state<<10 | int64(s.pieces)<<4 | int64(e.starters|e.tops<<1|e.all<<2)
	}
	if s.seen == nil {
		if s.steps <= s.tableAfter {
			return state, nil
		}
		s.seen = make([]met, 1<<tableBits)
	}
	return state, &s.seen[uint64(state)*0x9E3779B97F4A7C15>>(64-tableBits)] // Fibonacci hashing
}

const beyond = int64(1) << 61 // more than anything costs

// solve searches by the terms and counts the result's cost by asked; with a
// place, only what has an order counts. The table of states met is made after
// so many states.
func solve(need int64, stock []Piece, by, asked Terms, place *placing, tableAfter int) (Makeup, error) {
	from := available(stock)
	s := newSearch(stock, from, by.MaxPieces, place)
	s.tableAfter = tableAfter
	if place != nil {
		place.steps = 0
	}
	if fewest := s.fewest(need); fewest > s.open[0] {
		return Makeup{}, unreachable(need, stock, by.MaxPieces)
	}
	cost := s.cheapestOf(need, by.JointPrice)
	switch {
	case s.stopped:
		return Makeup{}, fault("segment.effort")
	case cost == beyond:
		return Makeup{}, fault("segment.stopped.several")
	}
	return s.makeup(need, stock, from, asked), nil
}

// fewest returns the fewest pieces that can reach the need; more than there are
// when none can.
func (s *search) fewest(need int64) int {
	k := 1
	for k <= s.open[0] && s.longest[k] < need {
		k++
	}
	return k
}

// cheapestOf leaves the cheapest make-up in best and order, and returns its
// cost, beyond when there is none.
func (s *search) cheapestOf(need, jointPrice int64) int64 {
	cost := beyond
	for k := s.fewest(need); k <= s.open[0]; k++ {
		joints := jointPrice * int64(k-1)
		if joints+max(need, s.shortest[k])+s.cheapest[k] >= cost {
			break
		}
		s.pieces, s.target, s.found = k, need, false
		if s.place == nil {
			s.limit = cost - joints
			if s.least(0, k, need) < s.limit {
				s.descend(0, k, need, 0)
			}
		} else {
			s.widen(k, cost-joints)
		}
		if s.stopped {
			break
		}
		if s.found {
			cost = s.limit + joints
		}
	}
	return cost
}

// widen searches k pieces with rules: cost in length and extras below most.
func (s *search) widen(k int, most int64) {
	reach := s.place.reach()
	target, ok := reach.next(k, max(s.target, s.shortest[k]))
	if !ok {
		return
	}
	s.target = target
	bound := s.least(0, k, target)
	most = min(most, s.dearest(k))
	for width := int64(0); ; width = max(2*width, reach.unit) {
		limit := min(most, bound+width+1)
		if limit <= bound {
			return
		}
		s.limit = limit
		s.descend(0, k, target, 0)
		if s.found || s.stopped || limit == most {
			return
		}
	}
}

// dearest is more than k pieces can cost in length and extras: the last of them
// begins below the need.
func (s *search) dearest(k int) int64 {
	length, extra := int64(0), int64(0)
	for i := range s.n {
		length, extra = max(length, s.length[i]), max(extra, s.extra[i])
	}
	return s.place.need + length + extra*int64(k)
}

// makeup writes the cheapest make-up found by the lines of the stock.
func (s *search) makeup(need int64, stock []Piece, from []int, asked Terms) Makeup {
	m := Makeup{Counts: make([]int, len(stock)), Steps: s.steps}
	for i, n := range s.best {
		m.Counts[from[i]] = n
		m.Pieces += n
		m.Total += int64(n) * s.length[i]
		m.Extra += int64(n) * s.extra[i]
	}
	m.Sequence = make([]int, 0, m.Pieces)
	if s.place == nil {
		for line, n := range m.Counts {
			for range n {
				m.Sequence = append(m.Sequence, line)
			}
		}
	} else {
		m.Steps += s.place.steps
		for _, i := range s.order {
			m.Sequence = append(m.Sequence, from[i])
		}
	}
	m.OffCut = m.Total - need
	m.Cost = m.OffCut + asked.JointPrice*int64(m.Pieces-1) + m.Extra
	return m
}

// available returns the lines that have pieces.
func available(stock []Piece) []int {
	lines := make([]int, 0, len(stock))
	for i, p := range stock {
		if p.Count != 0 {
			lines = append(lines, i)
		}
	}
	return lines
}

// newSearch builds the tables from the lines that have pieces. Roles count only
// with a place.
func newSearch(stock []Piece, from []int, K int, place *placing) *search {
	n, row := len(from), K+1
	whole := make([]int64, 3*n+3*(n+1)*row+n)
	cut := func(size int) []int64 {
		part := whole[:size:size]
		whole = whole[size:]
		return part
	}
	small := make([]int, 5*n+1)
	cutSmall := func(size int) []int {
		part := small[:size:size]
		small = small[size:]
		return part
	}
	s := &search{n: n, row: row, place: place, near: beyond, effort: mostSteps,
		length: cut(n), extra: cut(n), grid: cut(n),
		shortest: cut((n + 1) * row), longest: cut((n + 1) * row), cheapest: cut((n + 1) * row),
		count: cutSmall(n), before: cutSmall(n), open: cutSmall(n + 1), at: cutSmall(n), best: cutSmall(n),
	}
	if place != nil {
		s.ends = place.ends()
	}
	dear := false
	for i, line := range from {
		p := stock[line]
		s.length[i], s.extra[i], s.count[i], s.before[i] = p.Length, p.Extra, K, -1
		if p.Count != Unlimited {
			s.count[i] = min(K, p.Count)
		}
		dear = dear || p.Extra > 0
		for h := i - 1; h >= 0; h-- {
			if s.length[h] == p.Length && s.extra[h] <= p.Extra && (place == nil || place.replaces(h, i)) {
				s.before[i] = h
				break
			}
		}
	}
	for i := n - 1; i >= 0; i-- {
		s.open[i] = min(K, s.open[i+1]+s.count[i])
		if i < n-1 {
			s.grid[i] = gcd(s.grid[i+1], abs(s.length[i]-s.length[i+1]))
		}
	}
	lines := make([]int, n)
	for i := range lines {
		lines[i] = i
	}
	sort.SliceStable(lines, func(i, j int) bool { return s.length[lines[i]] < s.length[lines[j]] })
	s.fill(s.shortest, s.length, lines)
	slices.Reverse(lines)
	s.fill(s.longest, s.length, lines)
	if dear {
		sort.SliceStable(lines, func(i, j int) bool { return s.extra[lines[i]] < s.extra[lines[j]] })
		s.fill(s.cheapest, s.extra, lines)
		s.byRatio = lines
		slices.SortStableFunc(lines, func(a, b int) int {
			return sign(s.extra[a]*s.length[b] - s.extra[b]*s.length[a]) // at most 3e17
		})
	}
	return s
}

// fill writes for each i and k the sum of k values of the lines i and later,
// taken in the order of lines.
func (s *search) fill(table, value []int64, lines []int) {
	for i := range s.n {
		k, sum := 0, int64(0)
		for _, line := range lines {
			if line < i {
				continue
			}
			for taken := 0; taken < s.count[line] && k < s.open[i]; taken++ {
				k++
				sum += value[line]
				table[i*s.row+k] = sum
			}
		}
	}
}

// least is the bound: what k pieces from line i on cost at least when their
// lengths must sum to at least r.
func (s *search) least(i, k int, r int64) int64 {
	at := i*s.row + k
	low, dear := s.shortest[at], s.cheapest[at]
	if r > low {
		low = r
		if g := s.grid[i]; g > 1 {
			rest := (int64(k)*s.length[s.n-1] - r) % g
			if rest < 0 {
				rest += g
			}
			low += rest
		}
	}
	if s.byRatio != nil {
		dear = max(dear, s.cover(i, r))
	}
	return low + dear
}

// cover is the fractional cover of r by the extra costs of lines i and later,
// rounded up.
func (s *search) cover(i int, r int64) int64 {
	sum := int64(0)
	for _, line := range s.byRatio {
		if r <= 0 {
			break
		}
		if line < i {
			continue
		}
		l, e := s.length[line], s.extra[line]
		if all := l * int64(s.count[line]); all < r {
			sum += e * int64(s.count[line])
			r -= all
			continue
		}
		// r <= 40 l, so r e is at most 4e7 x 1.4e11: an order list puts prices on pieces.
		return sum + (r*e+l-1)/l
	}
	return sum
}

// descend decides line i and the later ones: exactly k pieces, at least r of
// length, spent in length and extras before them.
func (s *search) descend(i, k int, r, spent int64) {
	s.steps++
	if s.steps > s.effort {
		s.stopped = true
	}
	if s.stopped {
		return
	}
	if i >= s.n-2 {
		s.finish(i, k, r, spent)
		return
	}
	state, place := s.slot(i, k, r)
	if place != nil && place.state == state && spent+place.bound >= s.limit {
		return
	}
	outer, used := s.near, s.ends
	s.near = beyond
	high := min(k, s.count[i])
	if s.place != nil {
		high = min(high, used.room(s.place.role[i]))
	}
	if b := s.before[i]; b >= 0 && s.at[b] < s.count[b] {
		high = 0
	}
	l, e := s.length[i], s.length[i]+s.extra[i]
	for a := high; a >= 0 && k-a <= s.open[i+1]; a-- {
		rest, left, paid := k-a, r-int64(a)*l, spent+int64(a)*e
		if s.longest[(i+1)*s.row+rest] < left || paid+s.least(i+1, rest, left) >= s.limit {
			continue
		}
		s.at[i] = a
		if s.place != nil {
			s.ends = used.with(s.place.role[i], a)
		}
		s.descend(i+1, rest, left, paid)
	}
	s.at[i], s.ends = 0, used
	if place != nil && !s.stopped {
		*place = met{state: state, bound: min(s.limit, s.near) - spent}
	}
	s.near = min(s.near, outer)
}

// finish decides the last two lines, or the last one, without search.
func (s *search) finish(i, k int, r, spent int64) {
	p, q := i, s.n-1
	high, low := min(k, s.count[p]), 0
	if p == q {
		low = k
	} else {
		low = max(0, k-s.count[q])
		// a p + (k-a) q >= r, that is a (p - q) >= r - k q.
		missing := r - int64(k)*s.length[q]
		switch d := s.length[p] - s.length[q]; {
		case d > 0 && missing > 0:
			low = int(max(int64(low), (missing+d-1)/d))
		case d < 0:
			if missing > 0 {
				return
			}
			high = int(min(int64(high), missing/d))
		case d == 0 && missing > 0:
			return
		}
	}
	if s.place != nil && s.place.must && p != q {
		high = min(high, k-1)
	}
	if low > high {
		return
	}
	each, other := s.length[p]+s.extra[p], s.length[q]+s.extra[q]
	if s.place != nil {
		s.finishInOrder(p, q, k, low, high, r, spent)
		return
	}
	a := high
	if p != q && each > other {
		a = low
	}
	cost := spent + int64(a)*each + int64(k-a)*other
	if cost >= s.limit || int64(a)*s.length[p]+int64(k-a)*s.length[q] < r {
		return
	}
	s.limit, s.found = cost, true
	s.at[q] = k - a
	s.at[p] = a
	copy(s.best, s.at)
	s.at[q], s.at[p] = 0, 0
}

// finishInOrder decides the last two lines by trying: low to high pieces of p,
// the rest of q.
func (s *search) finishInOrder(p, q, k, low, high int, r, spent int64) {
	for a := high; a >= low; a-- {
		length := int64(a)*s.length[p] + int64(k-a)*s.length[q]
		cost := spent + length + int64(a)*s.extra[p] + int64(k-a)*s.extra[q]
		if cost >= s.limit || length < r || !s.place.reach().total(s.pieces, s.target-r+length) {
			continue
		}
		s.at[q] = k - a
		s.at[p] = a
		switch {
		case !s.place.fits(s.at, s.pieces):
			s.near = min(s.near, cost)
			s.stopped = s.stopped || s.place.steps > mostSteps
		case s.take != nil:
			s.near = min(s.near, cost)
			s.take(s.place.order, cost)
		default:
			s.limit, s.found = cost, true
			copy(s.best, s.at)
			s.order = append(s.order[:0], s.place.order...)
		}
		s.at[q], s.at[p] = 0, 0
	}
}

// unreachable says why no make-up reaches the need: too little stock, or too
// few pieces allowed.
func unreachable(need int64, stock []Piece, K int) error {
	lines := make([]Piece, 0, len(stock))
	for _, p := range stock {
		if p.Count != 0 {
			lines = append(lines, p)
		}
	}
	sort.SliceStable(lines, func(i, j int) bool { return lines[j].Length < lines[i].Length })
	left, pieces := need, int64(0)
	for _, p := range lines {
		fewest := (left + p.Length - 1) / p.Length
		if p.Count == Unlimited || int64(p.Count) >= fewest {
			e := fault("segment.tooManyPieces")
			e.Value, e.Limit = float64(pieces+fewest), float64(K)
			return e
		}
		left -= int64(p.Count) * p.Length
		pieces += int64(p.Count)
	}
	e := fault("segment.stockShort")
	e.Value, e.Limit = float64(Metres(need)), float64(Metres(need-left))
	return e
}

func gcd(a, b int64) int64 {
	for b != 0 {
		a, b = b, a%b
	}
	return a
}

func abs(a int64) int64 { return max(a, -a) }

func sign(a int64) int {
	switch {
	case a < 0:
		return -1
	case a > 0:
		return 1
	}
	return 0
}
