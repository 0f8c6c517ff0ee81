package segment

import (
	"slices"
	"sort"
)

// choice is a group with its pool.
type choice struct {
	*jobGroup
	task *task
	pool []pattern
	at   map[string]int // the number of a pattern by its counts
	low  int64          // cost with prices of the cheapest, when last searched
}

// pattern is a make-up of a pile of a group.
type pattern struct {
	cost  int64
	uses  []use // of limited lines
	order []int // the line of each piece, from the toe up
}

type use struct{ line, n int }

// with returns the cost with a price on each piece of a limited line.
func (p *pattern) with(prices []int64) int64 {
	cost := p.cost
	for _, u := range p.uses {
		cost += prices[u.line] * int64(u.n)
	}
	return cost
}

// add puts a make-up into the pool and returns its number.
func (s *solver) add(c *choice, order []int) int {
	counts := make([]byte, len(s.stock))
	p := pattern{cost: s.price*int64(len(order)-1) - c.need, order: slices.Clone(order)}
	for _, line := range order {
		counts[line]++
		p.cost += s.stock[line].Length + s.stock[line].Extra
	}
	if at, known := c.at[string(counts)]; known {
		return at
	}
	for line, n := range counts {
		if n > 0 && s.count[line] != Unlimited {
			p.uses = append(p.uses, use{line, int(n)})
		}
	}
	c.at[string(counts)] = len(c.pool)
	c.pool = append(c.pool, p)
	return len(c.pool) - 1
}

// cheapest is the number of the cheapest pattern of a pool.
func (c *choice) cheapest(prices []int64) int {
	at, least := 0, beyond
	for i := range c.pool {
		if cost := c.pool[i].with(prices); cost < least {
			at, least = i, cost
		}
	}
	return at
}

// widen adds to each pool what is nearly as cheap as the cheapest with the prices
// of the bound, at most so many.
func (s *solver) widen(size int) {
	for _, c := range s.groups {
		s.list(c, s.value(s.best)-s.raw, size)
	}
}

// list adds to the pool every pattern that with the prices of the bound is dearer
// than the cheapest by at most so much, the cheapest first, and says whether it
// could list them all within the size.
func (s *solver) list(c *choice, above int64, size int) bool {
	low := c.pool[c.cheapest(s.prices)].with(s.prices)
	type found struct {
		order []int
		cost  int64
	}
	var list []found
	all := true
	f := newSearch(s.priced(s.prices), available(s.stock), c.terms.MaxPieces, c.task.place)
	lines := available(s.stock)
	for i := range f.before {
		f.before[i] = -1 // another line of the same length is another choice here
	}
	f.effort, f.tableAfter, c.task.place.steps = listSteps/len(s.groups), listSteps, 0 // a table prunes little where all are taken
	joints, limit := int64(0), low+min(above, beyond/4)+1                              // cost with prices, of the whole pile
	f.take = func(order []int, cost int64) {
		list = append(list, found{slices.Clone(order), cost + joints - c.need})
		if len(list) < 4*size {
			return
		}
		sort.SliceStable(list, func(i, j int) bool { return list[i].cost < list[j].cost })
		list, all = list[:size], false
		limit = list[size-1].cost
		f.limit = limit + c.need - joints
	}
	for k := f.fewest(c.need); k <= f.open[0] && !f.stopped; k++ {
		joints = s.price * int64(k-1)
		f.limit = limit + c.need - joints
		if max(c.need, f.shortest[k])+f.cheapest[k] >= f.limit {
			break
		}
		target, ok := c.task.place.reach().next(k, max(c.need, f.shortest[k]))
		if !ok {
			continue
		}
		f.pieces, f.target = k, target
		if f.least(0, k, target) < f.limit {
			f.descend(0, k, target, 0)
		}
	}
	sort.SliceStable(list, func(i, j int) bool { return list[i].cost < list[j].cost })
	if len(list) > size {
		list, all = list[:size], false
	}
	for _, l := range list {
		for at := range l.order {
			l.order[at] = lines[l.order[at]]
		}
		s.add(c, l.order)
	}
	return all && !f.stopped
}

const listSteps = 1000000 // for all groups
