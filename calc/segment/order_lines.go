package segment

// sharedLines are the lines of a stock with those put together that nothing
// tells apart: length, role and extra cost. For a job they are one supply.
type sharedLines struct {
	stock []Piece
	of    [][]int // the lines of the stock behind each
	left  []int   // of each line of the stock, [Unlimited] or what is not allotted yet
}

func mergeLines(stock []Piece) *sharedLines {
	s := &sharedLines{}
	for line, p := range stock {
		p.Count = min(p.Count, MostPiles*MostPieces) // more cannot be used, and sums stay small
		s.left = append(s.left, p.Count)
		at := -1
		for i, o := range s.stock {
			if o.Length == p.Length && o.Role == p.Role && o.Extra == p.Extra {
				at = i
			}
		}
		switch {
		case at < 0:
			s.stock, s.of = append(s.stock, p), append(s.of, []int{line})
			continue
		case p.Count == Unlimited || s.stock[at].Count == Unlimited:
			s.stock[at].Count = Unlimited
		default:
			s.stock[at].Count += p.Count
		}
		s.of[at] = append(s.of[at], line)
	}
	return s
}

// allot writes make-ups by shared lines anew by the lines of the stock: the
// earliest line that has one gives the piece, the last one what is missing.
// Lines beyond the shared ones are off-cuts and follow the stock.
func (s *sharedLines) allot(piles []OrderPile, lines int) {
	for i := range piles {
		m := &piles[i].Makeup
		if piles[i].Err != nil {
			continue
		}
		m.Counts = make([]int, lines)
		for at, shared := range m.Sequence {
			line := len(s.left) + shared - len(s.stock)
			if shared < len(s.stock) {
				line = s.give(shared)
			}
			m.Sequence[at] = line
			m.Counts[line]++
		}
	}
}

func (s *sharedLines) give(shared int) int {
	of := s.of[shared]
	for _, line := range of {
		if s.left[line] != 0 {
			if s.left[line] != Unlimited {
				s.left[line]--
			}
			return line
		}
	}
	return of[len(of)-1]
}
