package segment

import "math/bits"

// reach is the set of heights at which joints can lie, by the number of pieces
// below them, with as many pieces of every line as one likes: what it leaves
// out, no make-up reaches; what it holds, a limited stock may still not.
//
// Heights are multiples of the greatest common divisor of all lengths, and one
// bit stands for each below the need: a joint at or above the needed head would
// carry a piece that the pile does not need. Layer k is layer k-1 moved up by
// each length, the banned heights taken out; 64 heights are moved at a time, and
// only those from which the pieces that may still follow can reach the need.
type reach struct {
	unit   int64
	size   int      // heights: multiples 0 to size-1 of the unit
	free   []uint64 // heights where a joint may lie
	layers [][]uint64
	most   int64 // pieces, and the longest of them in units
	long   int64
	place  *placing
}

func newReach(p *placing) *reach {
	r := &reach{place: p, most: int64(p.most)}
	for _, l := range p.length {
		r.unit, r.long = gcd(r.unit, l), max(r.long, l)
	}
	r.long /= r.unit
	r.size = int((p.need-1)/r.unit) + 1
	r.free = make([]uint64, (r.size+63)/64)
	for i := range r.free {
		r.free[i] = ^uint64(0)
	}
	for _, b := range p.bans {
		if b.to < 0 {
			continue
		}
		r.close(int((max(0, b.from)+r.unit-1)/r.unit), int(b.to/r.unit))
	}
	r.close(r.size, len(r.free)*64-1)
	return r
}

// close takes the heights from first to last out of the free ones.
func (r *reach) close(first, last int) {
	last = min(last, len(r.free)*64-1)
	for h := first; h <= last; {
		if h%64 == 0 && h+63 <= last {
			r.free[h/64] = 0
			h += 64
			continue
		}
		r.free[h/64] &^= 1 << (h % 64)
		h++
	}
}

// layer returns the joints above k pieces, k >= 1.
func (r *reach) layer(k int) []uint64 {
	for len(r.layers) < k {
		next := make([]uint64, len(r.free))
		if len(r.layers) == 0 {
			for i, l := range r.place.length {
				if h := int(l / r.unit); r.place.stands(i, 0, 2) && h < r.size {
					next[h/64] |= 1 << (h % 64)
				}
			}
		} else {
			below, joint := r.layers[len(r.layers)-1], int64(len(r.layers)+1)
			low := int(max(0, int64(r.size)-(r.most-joint)*r.long) / 64)
			high := int(min(int64(r.size), joint*r.long)/64) + 1
			for i, l := range r.place.length {
				if r.place.stands(i, 1, 3) {
					move(next, below, int(l/r.unit), low, min(high, len(next)))
				}
			}
		}
		for i := range next {
			next[i] &= r.free[i]
		}
		r.layers = append(r.layers, next)
	}
	return r.layers[k-1]
}

// move adds the set moved up by so many heights, as far as it comes to lie in the
// words from low to before high.
func move(to, set []uint64, up, low, high int) {
	words, shift := up/64, up%64
	low = max(low, words)
	if low >= high {
		return
	}
	below := uint64(0)
	if low > words {
		below = set[low-words-1]
	}
	to = to[low:high]
	for i, word := range set[low-words : high-words] {
		to[i] |= word<<shift | below>>(64-shift) // nothing where shift is 0
		below = word
	}
}

// total says whether k pieces can sum to so much.
func (r *reach) total(k int, sum int64) bool {
	if sum%r.unit != 0 {
		return false
	}
	for i, l := range r.place.length {
		if !r.place.stands(i, k-1, k) {
			continue
		}
		if k == 1 {
			if l == sum {
				return true
			}
			continue
		}
		if h := (sum - l) / r.unit; h > 0 && h < int64(r.size) && r.layer(k - 1)[h/64]>>(h%64)&1 == 1 {
			return true
		}
	}
	return false
}

// next returns the least sum of k pieces that is at least so much.
func (r *reach) next(k int, least int64) (sum int64, ok bool) {
	for i, l := range r.place.length {
		if !r.place.stands(i, k-1, k) {
			continue
		}
		found := l
		if k == 1 {
			if l < least {
				continue
			}
		} else {
			h := r.from(r.layer(k-1), max(0, (least-l+r.unit-1)/r.unit))
			if h < 0 {
				continue
			}
			found += h * r.unit
		}
		if !ok || found < sum {
			sum, ok = found, true
		}
	}
	return sum, ok
}

// from returns the first height of the set at or above h, -1 without one.
func (r *reach) from(set []uint64, h int64) int64 {
	if h >= int64(r.size) {
		return -1
	}
	i := int(h / 64)
	word := set[i] &^ (1<<(h%64) - 1)
	for word == 0 {
		if i++; i == len(set) {
			return -1
		}
		word = set[i]
	}
	return int64(i*64 + bits.TrailingZeros64(word))
}
