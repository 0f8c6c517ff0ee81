package segment

// BestByTable is [Best] with the table of states met in use from the first
// state, which a small case would not reach otherwise. The stock must be good.
func BestByTable(need int64, stock []Piece, terms Terms) (Makeup, error) {
	return solve(need, stock, terms, terms, nil, 0)
}

// BestByTable is [JointRules.Best] by the search with rules alone, and with the
// table of states met in use from the first state.
func (r JointRules) BestByTable(need int64, stock []Piece, terms Terms) (Makeup, error) {
	t, err := r.task(need, stock, terms)
	if err != nil {
		return Makeup{}, err
	}
	return solve(need, stock, terms, terms, t.place, 0)
}
