package segment

// Role says where in the pile a piece may stand. It binds that piece alone: a
// piece without a role may stand anywhere, also first, beside starters in the
// stock. In a pile of one piece, that piece is the first and the last.
type Role uint8

// The roles.
const (
	Anywhere  Role = iota
	Starter        // first in the ground
	Middle         // neither first nor last
	Top            // last
	EitherEnd      // first or last, not between: an off-cut, spliced at one end only
	lastRole  = EitherEnd
)

// stands says whether the piece may be number at (from 0, from the toe up) of
// so many.
func (r Role) stands(at, of int) bool {
	first, last := at == 0, at == of-1
	switch r {
	case Starter:
		return first
	case Middle:
		return !first && !last
	case Top:
		return last
	case EitherEnd:
		return first || last
	}
	return true
}

// ends counts the pieces at hand that need an end of the pile.
type ends struct{ starters, tops, all int }

// room returns how many more pieces of a role the pile can take.
func (e ends) room(r Role) int {
	switch r {
	case Starter:
		return min(1-e.starters, 2-e.all)
	case Top:
		return min(1-e.tops, 2-e.all)
	case EitherEnd:
		return 2 - e.all
	}
	return MostPieces
}

// with returns the ends after n more pieces of a role.
func (e ends) with(r Role, n int) ends {
	switch r {
	case Starter:
		e.starters += n
		e.all += n
	case Top:
		e.tops += n
		e.all += n
	case EitherEnd:
		e.all += n
	}
	return e
}
