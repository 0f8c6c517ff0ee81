package segment

import (
	"math"
	"math/bits"
	"slices"
)

// climb moves prices towards the highest bound over the pools, for so many piles
// of each group and so many pieces of each line, no further than a box around
// where it begins. It returns the best prices met, their bound, and how often each
// pattern was the cheapest on the second half of the way.
//
// Each step goes along what is taken beyond the count of each line, the
// direction in which the bound rises, with a part of the direction before, which
// keeps it from going to and fro across a ridge; and so far that the bound would
// reach a level somewhat above the highest seen, which comes nearer when it is
// not reached. (The subgradient method with a deflected direction, Polyak's step
// and an estimated level.) The bound is concave in the prices, so there is no
// lower top to be caught on.
func (s *solver) climb(demand, count []int, from []int64, box int64, steps int) (best []int64, bound int64, chosen [][]int) {
	at := make([]int64, len(from)) // prices, in parts of 1/fine
	for line, price := range from {
		at[line] = price * fine
	}
	best, prices := slices.Clone(from), slices.Clone(from)
	chosen = make([][]int, len(s.groups))
	for g, c := range s.groups {
		chosen[g] = make([]int, len(c.pool))
	}
	beyond := make([]int64, len(count)) // taken beyond the count
	along := make([]int64, len(count))  // in parts of 1/fine
	level, stale, patience := int64(0), 0, max(3, steps/20)
	for step := range steps {
		for line, n := range count {
			beyond[line] = -int64(n)
		}
		now := int64(0)
		for g, c := range s.groups {
			if demand[g] == 0 {
				continue
			}
			p := c.cheapest(prices)
			now += int64(demand[g]) * c.pool[p].with(prices)
			for _, u := range c.pool[p].uses {
				beyond[u.line] += int64(demand[g] * u.n)
			}
			if step >= steps/2 {
				chosen[g][p]++
			}
		}
		square, far := int64(0), int64(fine) // at most 60 x 4e7^2
		for line, price := range prices {
			if s.count[line] == Unlimited {
				continue
			}
			now -= price * int64(count[line])
			d := beyond[line]*fine + along[line]*carried/100
			if price == 0 {
				d = max(0, d)
			}
			along[line] = d
			square, far = square+d*d, max(far, abs(d))
		}
		switch {
		case step == 0:
			bound, level = now, part(box, square, 2*far*fine)
		case now > bound:
			if now > bound+level/2 {
				level += level / 2
			}
			bound, stale = now, 0
			copy(best, prices)
		default:
			if stale++; stale%patience == 0 {
				level /= 2
			}
		}
		if square == 0 {
			break // as much is taken as there is, wherever it has a price
		}
		for line := range prices {
			if s.count[line] != Unlimited {
				low, high := max(0, from[line]-box), min(s.missing, from[line]+box)
				move := part(bound+level-now, along[line]*fine*fine, square)
				at[line] = min(max(low*fine, at[line]+move), high*fine)
				prices[line] = (at[line] + fine/2) / fine
			}
		}
	}
	return best, bound, chosen
}

const (
	fine    = 64
	carried = 70 // how many per cent of the direction before go into the next
)

// part is a b/c towards zero, a >= 0, c > 0; where that is more than any price,
// so much.
func part(a, b, c int64) int64 {
	high, low := bits.Mul64(uint64(a), uint64(abs(b)))
	most := int64(math.MaxInt64 / 4)
	if high < uint64(c) {
		if q, _ := bits.Div64(high, low, uint64(c)); q < uint64(most) {
			most = int64(q)
		}
	}
	if b < 0 {
		return -most
	}
	return most
}
