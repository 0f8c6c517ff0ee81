package segment

import "slices"

// plan says how many piles of each group take which pattern of its pool.
type plan struct {
	piles   [][]int // of each group and pattern; patterns added later have none
	left    []int   // of each limited line; below zero: missing
	cost    int64
	missing int
}

func (s *solver) empty() *plan {
	p := &plan{piles: make([][]int, len(s.groups)), left: make([]int, len(s.count))}
	for line, n := range s.count {
		p.left[line] = max(0, n)
	}
	return p
}

// assign gives a pattern to n more piles of a group, fewer where n is negative.
func (s *solver) assign(p *plan, g, pattern, n int) {
	c := s.groups[g]
	if grow := len(c.pool) - len(p.piles[g]); grow > 0 {
		p.piles[g] = append(p.piles[g], make([]int, grow)...)
	}
	p.piles[g][pattern] += n
	p.cost += c.pool[pattern].cost * int64(n)
	p.take(c.pool[pattern].uses, n)
}

// take takes the pieces of n patterns.
func (p *plan) take(uses []use, n int) {
	for _, u := range uses {
		p.missing -= max(0, -p.left[u.line])
		p.left[u.line] -= u.n * n
		p.missing += max(0, -p.left[u.line])
	}
}

func (p *plan) clone() *plan {
	q := *p
	q.left, q.piles = slices.Clone(p.left), make([][]int, len(p.piles))
	for g := range q.piles {
		q.piles[g] = slices.Clone(p.piles[g])
	}
	return &q
}

func (s *solver) value(p *plan) int64 { return p.cost + s.missing*int64(p.missing) }

// offer keeps a plan that is better than the one at hand.
func (s *solver) offer(p *plan) {
	if s.best == nil || s.value(p) < s.value(s.best) {
		s.best = p.clone()
	}
}

// room is how many piles can take a pattern without missing a piece.
func (p *plan) room(uses []use) int {
	n := MostPiles
	for _, u := range uses {
		n = min(n, max(0, p.left[u.line])/u.n)
	}
	return n
}

// dive builds a plan: it climbs, fixes what was chosen all along, as far as there
// are pieces for it, and climbs anew for the rest. Where nothing was, one pile
// gets the pattern that was chosen most among those that have their pieces. When
// that has taken its effort, the piles that are open get what misses least.
func (s *solver) dive() *plan {
	p, demand, prices := s.empty(), s.demand(), slices.Clone(s.prices)
	count, effort := make([]int, len(s.count)), diveEffort
	for {
		open := 0
		for _, d := range demand {
			open += d
		}
		if open == 0 {
			return p
		}
		for line := range count {
			count[line] = max(0, p.left[line])
		}
		fixed, most, group, pattern := false, -1, -1, -1
		var chosen [][]int
		if effort -= s.patterns() * diveSteps; effort > 0 {
			prices, _, chosen = s.climb(demand, count, prices, s.box()/8+1, diveSteps)
		}
		for g, c := range s.groups {
			if effort <= 0 {
				break
			}
			for i, times := range chosen[g] {
				if demand[g] == 0 || times == 0 {
					continue
				}
				room := p.room(c.pool[i].uses)
				if n := min(demand[g]*times/(diveSteps-diveSteps/2), demand[g], room); n > 0 {
					s.assign(p, g, i, n)
					demand[g] -= n
					fixed = true
				} else if room > 0 && times > most {
					most, group, pattern = times, g, i
				}
			}
		}
		if fixed {
			continue
		}
		if group < 0 {
			group, pattern = s.leastMissing(p, demand, prices)
		}
		s.assign(p, group, pattern, 1)
		demand[group]--
	}
}

const (
	diveSteps  = 24
	diveEffort = 8000000 // patterns looked at
)

// leastMissing is the pattern of an open pile that misses the fewest pieces, and
// is the cheapest with these prices among those; the longest pile first.
func (s *solver) leastMissing(p *plan, demand []int, prices []int64) (group, pattern int) {
	group = slices.IndexFunc(demand, func(d int) bool { return d > 0 })
	least, fewest := beyond, 0
	for i := range s.groups[group].pool {
		c := &s.groups[group].pool[i]
		missing := p.missing
		p.take(c.uses, 1)
		missing = p.missing - missing
		p.take(c.uses, -1)
		if cost := c.with(prices); least == beyond || missing < fewest || missing == fewest && cost < least {
			pattern, fewest, least = i, missing, cost
		}
	}
	return group, pattern
}
