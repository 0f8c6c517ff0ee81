package segment

import (
	"slices"
	"sort"
)

// jobGroup is a number of piles that ask for the same.
type jobGroup struct {
	need  int64
	terms Terms
	bans  []ban
	begun bool
	piles []int
}

// groupPiles puts piles together that have the same need, limit on pieces and
// heights where no joint may lie, begun or not; the longest first. A pile that cannot be asked
// for gets its error.
func groupPiles(piles []JobPile, price int64, out []OrderPile) []*jobGroup {
	var groups []*jobGroup
	of := map[int64][]*jobGroup{}
	good := []Piece{{Length: 1, Count: 1}}
	for i, p := range piles {
		terms := Terms{JointPrice: price, MaxPieces: p.MaxPieces}
		bans, err := p.Rules.bans()
		if err == nil {
			err = check(p.Need, good, terms)
		}
		if err != nil {
			out[i].Err = err
			continue
		}
		at := slices.IndexFunc(of[p.Need], func(g *jobGroup) bool {
			return g.terms == terms && g.begun == p.Rules.Begun && slices.Equal(g.bans, bans)
		})
		if at < 0 {
			g := &jobGroup{need: p.Need, terms: terms, bans: bans, begun: p.Rules.Begun}
			at, of[p.Need] = len(of[p.Need]), append(of[p.Need], g)
			groups = append(groups, g)
		}
		g := of[p.Need][at]
		g.piles = append(g.piles, i)
	}
	sort.SliceStable(groups, func(i, j int) bool { return groups[j].need < groups[i].need })
	return groups
}

func (g *jobGroup) refuse(err error, out []OrderPile) {
	for _, i := range g.piles {
		out[i].Err = err
	}
}

func withoutCounts(stock []Piece) []Piece {
	stock = slices.Clone(stock)
	for i := range stock {
		stock[i].Count = Unlimited
	}
	return stock
}

// possible returns the groups that have a make-up, however many pieces there were
// of each line; the piles of the others get their error.
func possible(piles []JobPile, groups []*jobGroup, stock []Piece, out []OrderPile) []*jobGroup {
	stock = withoutCounts(stock)
	return slices.DeleteFunc(groups, func(g *jobGroup) bool {
		_, err := piles[g.piles[0]].Rules.Best(g.need, stock, g.terms)
		if err != nil {
			g.refuse(err, out)
		}
		return err != nil
	})
}

// jobPlan is what comes out for a job: for each pile the line of each of its
// pieces, from the toe up; nothing for a pile without.
type jobPlan struct {
	order   [][]int
	bound   int64
	lacking bool
}

// solveJob makes the plan of a job. Where the stock cannot do it, that is found
// out with pieces beyond the counts allowed but very dear; then the stock gets as
// many more as are missing, and the plan is made for that.
func solveJob(piles []JobPile, groups []*jobGroup, stock []Piece, out []OrderPile) jobPlan {
	count, boundless := make([]int, len(stock)), withoutCounts(stock)
	for i, p := range stock {
		count[i] = p.Count
	}
	plan := jobPlan{order: make([][]int, len(piles))}
	if len(groups) == 0 {
		return plan
	}
	s, err := newSolver(groups, stock, count)
	if err == nil {
		s.run(mostTrials, false)
	}
	if err != nil || s.best.missing > 0 {
		// A pile that the whole stock cannot make proves it at once.
		plan.lacking = err != nil && !unproven(err) || err == nil && s.lacking()
		if s, err = newSolver(groups, boundless, count); err != nil {
			for _, g := range groups {
				g.refuse(err, out)
			}
			return plan
		}
		s.run(mostTrials/8, true)
		plan.lacking = plan.lacking || s.lacking()
		s = s.enough(groups, stock)
	}
	plan.bound = s.bound
	for g, c := range s.groups {
		at := 0
		for pattern, n := range s.best.piles[g] {
			for range n {
				plan.order[c.piles[at]] = c.pool[pattern].order
				at++
			}
		}
	}
	return plan
}

// enough returns the solver of a stock that has what the best plan misses.
func (s *solver) enough(groups []*jobGroup, stock []Piece) *solver {
	more, count := slices.Clone(stock), make([]int, len(stock))
	for i := range more {
		if more[i].Count != Unlimited {
			more[i].Count += max(0, -s.best.left[i])
		}
		count[i] = more[i].Count
	}
	e, err := newSolver(groups, more, count)
	if err != nil {
		s.bound = 0 // that of a stock with pieces at a price is no bound here
		return s
	}
	e.offer(e.copy(s, s.best))
	e.run(mostTrials/4, true)
	return e
}

// copy is a plan of another solver with the same groups.
func (s *solver) copy(other *solver, of *plan) *plan {
	p := s.empty()
	for g, c := range s.groups {
		for pattern, n := range of.piles[g] {
			if n > 0 {
				s.assign(p, g, s.add(c, other.groups[g].pool[pattern].order), n)
			}
		}
	}
	return p
}
