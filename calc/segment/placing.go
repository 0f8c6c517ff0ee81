package segment

// placing asks whether given pieces can stand on one another so that every
// piece has its place and every joint lies where it may, and in which order.
//
// # Order
//
// Pieces are laid from the toe up, at each place the earliest stock line that
// leads to an end: the first order found is the first in the order of the
// stock, read from the toe. What can follow hangs only on the pieces that are
// left, not on the order of those below (their sum is the same), so pieces left
// over that led nowhere once are not tried again.
type placing struct {
	need   int64
	most   int // pieces
	bans   []ban
	length []int64 // of the lines of the search
	role   []Role
	same   []int // an earlier line of the same length and role, or -1
	free   bool  // no rule at all: any order will do
	begun  int   // 1 where pieces are in the ground below these, which count as one then
	must   bool  // the last line has to be used

	left  []int    // pieces left to lay
	radix []int    // the weight of one piece of a line in the number of what is left
	dead  []uint64 // numbers that led nowhere
	order []int    // the lines laid so far
	steps int

	reached *reach // nil until asked for
}

// mostRemembered bounds the table of what led nowhere: 128 kB of bits. A pile of
// twelve different pieces takes 4096 of them.
const mostRemembered = 1 << 20

// newPlacing takes the lines of stock with these numbers.
func newPlacing(need int64, most int, bans []ban, begun bool, stock []Piece, lines []int) *placing {
	p := &placing{need: need, most: most, bans: bans, free: len(bans) == 0}
	if begun {
		p.begun = 1
	}
	n := len(lines)
	p.length, p.role, p.same = make([]int64, n), make([]Role, n), make([]int, n)
	p.left, p.radix = make([]int, n), make([]int, n)
	for i, line := range lines {
		p.length[i], p.role[i], p.same[i] = stock[line].Length, stock[line].Role, -1
		p.free = p.free && p.role[i] == Anywhere
		for h := range i {
			if p.length[h] == p.length[i] && p.role[h] == p.role[i] {
				p.same[i] = h
			}
		}
	}
	return p
}

// replaces says whether a piece of line h may stand wherever one of i may.
func (p *placing) replaces(h, i int) bool { return p.role[h] == Anywhere || p.role[h] == p.role[i] }

// stands says whether a piece of line i may be number at of k.
func (p *placing) stands(i, at, k int) bool { return p.role[i].stands(at+p.begun, k+p.begun) }

// ends are the ends of the pile that are taken before any piece is laid.
func (p *placing) ends() ends { return ends{starters: p.begun, all: p.begun} }

// reach returns the reach of these lines.
func (p *placing) reach() *reach {
	if p.reached == nil {
		p.reached = newReach(p)
	}
	return p.reached
}

// arrange puts the pieces of a make-up in the first order that keeps the rules,
// and says whether there is one.
func (p *placing) arrange(m *Makeup, stock []Piece) bool {
	lines := available(stock)
	counts := make([]int, len(lines))
	for i, line := range lines {
		counts[i] = m.Counts[line]
	}
	p.steps = 0
	if !p.fits(counts, m.Pieces) {
		return false
	}
	copy(m.Sequence, p.lines(lines))
	return true
}

// lines is the order that was found, by the lines of the stock that has these.
func (p *placing) lines(available []int) []int {
	list := make([]int, len(p.order))
	for at, i := range p.order {
		list[at] = available[i]
	}
	return list
}

// fits says whether k pieces by these counts have an order, which then stands
// in p.order.
func (p *placing) fits(counts []int, k int) bool {
	e := p.ends()
	size := 1
	for i, n := range counts {
		e = e.with(p.role[i], n)
		p.radix[i], p.left[i] = size, n
		if size <= mostRemembered {
			size *= n + 1
		}
	}
	if e.starters > 1 || e.tops > 1 || e.all > 2 {
		return false
	}
	words := 0 // without a table where it would be too large
	if size <= mostRemembered {
		words = (size + 63) / 64
	}
	if cap(p.dead) < words {
		p.dead = make([]uint64, words)
	}
	p.dead = p.dead[:words]
	clear(p.dead)
	p.order = p.order[:0]
	return p.lay(0, k, size-1)
}

// lay lays the pieces left on a joint at this height; number is that of what
// is left.
func (p *placing) lay(height int64, k, number int) bool {
	at := len(p.order)
	if at == k {
		return true
	}
	p.steps++
	if p.steps > mostSteps {
		return false
	}
	for i, n := range p.left {
		if n == 0 || !p.stands(i, at, k) || p.same[i] >= 0 && p.left[p.same[i]] > 0 {
			continue
		}
		top, rest := height+p.length[i], number-p.radix[i]
		if at < k-1 && (top >= p.need || banned(p.bans, top)) || len(p.dead) > 0 && p.dead[rest/64]>>(rest%64)&1 == 1 {
			continue
		}
		p.left[i]--
		p.order = append(p.order, i)
		if p.lay(top, k, rest) {
			return true
		}
		p.order = p.order[:at]
		p.left[i]++
		if len(p.dead) > 0 {
			p.dead[rest/64] |= 1 << (rest % 64)
		}
	}
	return false
}
