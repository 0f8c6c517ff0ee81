package segment

// Shift is the best make-up with the founding level moved.
type Shift struct {
	By     int64  // deeper by so much [0.1 mm]; negative: higher
	Makeup Makeup // without pieces where there is an error
	Err    error
}

// shifts are how far the founding level is moved: 0.5 m and 1 m, up and down.
// Our own choice: about what a toe stops short or goes on in even ground.
var shifts = []int64{-10000, -5000, 5000, 10000}

// Shifted returns what the pile would be made of with its founding level 1 m and
// 0.5 m higher, and 0.5 m and 1 m deeper:
//
//	L_s = L_n + d
//
// L_n needed length [0.1 mm], d how much deeper. The head stays where it is, the
// joints move with the toe, and so do the rules' heights above it. Each shift
// has its own error, as [JointRules.Best] gives it.
func (r JointRules) Shifted(need int64, stock []Piece, terms Terms) []Shift {
	list := make([]Shift, 0, len(shifts))
	for _, by := range shifts {
		moved := r
		moved.Toe -= Metres(by)
		best, err := moved.Best(need+by, stock, terms)
		list = append(list, Shift{By: by, Makeup: best, Err: err})
	}
	return list
}
