package segment

import (
	"encoding/binary"
	"slices"
	"sort"
)

// trial searches plans in which some piles are open and the rest keep the
// patterns they have.
//
// With the prices of the bound, a plan costs
//
//	raw bound + sum over the piles of (pattern - cheapest of its group)
//	          + sum over the lines of price times what is left over
//	          + sum over the lines of (missing - price) times what is missing
//
// and no part is negative. A branch is left when what is sure of the three sums
// reaches the cost of the plan at hand. Sure are the patterns chosen; and of a
// line, what is left over or missing even if the open piles take the most or the
// least they can.
type trial struct {
	*solver
	plan   *plan // of the piles that are not open
	groups []*trialGroup
	steps  int // states that may still be visited

	ceiling int64            // dearer plans are not looked for
	seen    map[string]int64 // what was dearer by how much at least, see [trial.met]; nil without
	key     []byte
}

// trialGroup is a number of open piles of a group with the patterns that they may
// take, the cheapest with the prices first.
type trialGroup struct {
	g, piles   int
	ways       []int
	cheapest   int64
	above      []int64 // of each way, how much dearer than the cheapest
	low, high  []int   // of each line, what a pile takes at least and at most
	least, top []int   // of each line, what all groups after this take at least and at most
}

// prove searches all plans below a ceiling that comes nearer to the plan at hand.
// Where the search below one comes to an end, no plan is there but what it met, and
// the bound is that high; below the plan at hand itself, that plan is the best.
// Where the patterns are too many to list or the search takes too long, it leaves
// what it has.
func (s *solver) prove() {
	for part := int64(mostCeilings); part > 0 && !s.closed(); part /= 2 {
		t := &trial{solver: s, plan: s.empty(), steps: s.trials, seen: map[string]int64{}}
		t.ceiling = s.raw + (s.value(s.best)-1-s.raw)/part
		complete := true
		for g, c := range s.groups {
			complete = s.list(c, t.room(), proveSize) && complete
			t.groups = append(t.groups, s.ways(g, len(c.piles), len(c.pool)))
		}
		if !complete {
			part = 1 // once more for a better plan
			t.ceiling = s.value(s.best) - 1
		}
		t.run()
		if s.trials = t.steps; s.trials <= 0 {
			return
		}
		if complete {
			s.bound = max(s.bound, min(s.next(t.ceiling+1), s.value(s.best)))
		}
	}
}

// better opens a few piles at a time, at random, and searches what else they could
// take together, until that has not helped for a while.
func (s *solver) better() {
	whole := make([]*trialGroup, len(s.groups))
	for g := range s.groups {
		whole[g] = s.ways(g, 0, openSize)
	}
	plan, least := s.best.clone(), s.trials/2 // which is left to the proof
	for effort := betterSteps; effort > 0 && s.trials > least && !s.closed(); {
		best := s.value(s.best)
		t := &trial{solver: s, plan: plan, steps: openSteps, ceiling: best - 1}
		opened := t.openSome(whole)
		t.run()
		spent := openSteps/20 + len(s.groups)/50 + openSteps - max(0, t.steps)
		if s.value(s.best) < best {
			effort, plan = betterSteps, s.best.clone()
			spent += s.patterns() / 10
		} else {
			for _, o := range opened {
				s.assign(plan, o.g, o.pattern, 1)
			}
		}
		effort, s.trials = effort-spent, s.trials-spent
	}
}

// given is a pattern that a pile of a group has.
type given struct{ g, pattern int }

// openSome opens a few piles of the trial's plan at random and returns what they
// had. whole holds, for each group, what its piles may take.
func (t *trial) openSome(whole []*trialGroup) (opened []given) {
	for range openPiles {
		g, pattern := t.pick(t.plan)
		if pattern < 0 {
			continue
		}
		opened = append(opened, given{g, pattern})
		t.assign(t.plan, g, pattern, -1)
		if at := slices.IndexFunc(t.groups, func(o *trialGroup) bool { return o.g == g }); at >= 0 {
			t.groups[at].piles++
			continue
		}
		group := *whole[g]
		group.piles = 1
		t.groups = append(t.groups, &group)
	}
	return opened
}

// The effort of the searches for a plan.
const (
	mostTrials   = 1200000 // steps of all trials
	mostCeilings = 32      // the first is so small a part of the way to the plan at hand
	proveSize    = 300     // patterns of a group that a proof lists
	mostSeen     = 100000  // of what it met; some megabytes
	openPiles    = 6       // at a time, to make a plan better
	openSize     = 30      // patterns of each
	openSteps    = 3000    // of one such trial
	betterSteps  = 400000  // of those that did not help
)

// pick returns a pile of a plan that has a pattern, at random but the same every
// time; -1 where it met one that is open.
func (s *solver) pick(p *plan) (group, pattern int) {
	s.random = s.random*6364136223846793005 + 1442695040888963407 // Knuth's generator
	at := int(s.random >> 33 % uint64(s.piles))
	for group = range s.groups {
		if n := len(s.groups[group].piles); at >= n {
			at -= n
			continue
		}
		for pattern, n := range p.piles[group] {
			if at < n {
				return group, pattern
			}
			at -= n
		}
		break
	}
	return group, -1
}

// room is how much dearer than the raw bound a better plan may be.
func (t *trial) room() int64 { return min(t.value(t.best)-1, t.ceiling) - t.raw }

// ways are the patterns that so many open piles of a group may take, at most so
// many of them.
func (s *solver) ways(g, piles, size int) *trialGroup {
	c := s.groups[g]
	cheapest := c.pool[c.cheapest(s.prices)].with(s.prices)
	group := &trialGroup{g: g, piles: piles, cheapest: cheapest, low: make([]int, len(s.count)), high: make([]int, len(s.count))}
	room := s.value(s.best) - 1 - s.raw
	for i := range c.pool {
		if c.pool[i].with(s.prices)-cheapest <= room {
			group.ways = append(group.ways, i)
		}
	}
	sort.SliceStable(group.ways, func(i, j int) bool {
		return c.pool[group.ways[i]].with(s.prices) < c.pool[group.ways[j]].with(s.prices)
	})
	group.ways = group.ways[:min(size, len(group.ways))]
	for line := range group.low {
		group.low[line] = MostPieces
	}
	taken := make([]int, len(s.count))
	for _, way := range group.ways {
		group.above = append(group.above, c.pool[way].with(s.prices)-cheapest)
		clear(taken)
		for _, u := range c.pool[way].uses {
			taken[u.line] = u.n
		}
		for line, n := range taken {
			group.low[line], group.high[line] = min(group.low[line], n), max(group.high[line], n)
		}
	}
	return group
}

// run searches all ways of the open piles and offers what is better.
func (t *trial) run() {
	sort.SliceStable(t.groups, func(i, j int) bool { return len(t.groups[i].ways) < len(t.groups[j].ways) })
	least, top := make([]int, len(t.count)), make([]int, len(t.count))
	for i := len(t.groups) - 1; i >= 0; i-- {
		group := t.groups[i]
		group.least, group.top = slices.Clone(least), slices.Clone(top)
		for line := range least {
			least[line] += group.low[line] * group.piles
			top[line] += group.high[line] * group.piles
		}
	}
	above := t.plan.cost - t.raw // becomes what the piles that are not open are dearer by
	for line, price := range t.prices {
		above -= price * int64(t.plan.left[line])
	}
	for _, group := range t.groups {
		above += int64(group.piles) * group.cheapest
	}
	t.pile(0, 0, 0, above)
}

// pile decides pile number n of group i, from the way at on: piles of a group are
// alike, so their ways are taken in rising order. above is what the piles before
// are dearer by.
func (t *trial) pile(i, n, at int, above int64) {
	if i == len(t.groups) {
		t.offer(t.plan)
		return
	}
	group := t.groups[i]
	if t.steps--; t.steps <= 0 || above+t.sure(group, group.piles-n) > t.room() || t.met(i, n, at, above) {
		return
	}
	for w := at; w < len(group.ways) && above+group.above[w] <= t.room(); w++ {
		t.assign(t.plan, group.g, group.ways[w], 1)
		if n+1 < group.piles {
			t.pile(i, n+1, w, above+group.above[w])
		} else {
			t.pile(i+1, 0, 0, above+group.above[w])
		}
		t.assign(t.plan, group.g, group.ways[w], -1)
	}
}

// met says whether the trial was here before with as much left of each line, and no
// dearer: then nothing better is to be found.
func (t *trial) met(i, n, at int, above int64) bool {
	if t.seen == nil {
		return false
	}
	t.key = append(t.key[:0], byte(i), byte(i>>8), byte(n), byte(n>>8), byte(at), byte(at>>8))
	for _, left := range t.plan.left {
		t.key = binary.LittleEndian.AppendUint32(t.key, uint32(left))
	}
	least, met := t.seen[string(t.key)]
	if met && least <= above {
		return true
	}
	if met || len(t.seen) < mostSeen {
		t.seen[string(t.key)] = above
	}
	return false
}

// sure is what the lines add at least, with so many piles of this group and all
// groups after it open.
func (t *trial) sure(group *trialGroup, piles int) int64 {
	sum := int64(0)
	for line, left := range t.plan.left {
		if t.count[line] == Unlimited {
			continue
		}
		if over := left - group.top[line] - piles*group.high[line]; over > 0 {
			sum += t.prices[line] * int64(over)
		}
		if short := piles*group.low[line] + group.least[line] - left; short > 0 {
			sum += (t.missing - t.prices[line]) * int64(short)
		}
	}
	return sum
}
