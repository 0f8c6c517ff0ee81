package job

import "strings"

// shape is what the tables of fields say of one place: a map with names of its
// own, a map of things under ids, a list of maps, or a field.
type shape struct {
	names  map[string]*shape
	order  []string // of names, as in the tables
	each   *shape   // of a map under ids
	item   *shape   // of a list
	field  *Field
	needed []string // names that must be there
}

// shapeOf makes the shape of a table.
func shapeOf(fields []Field) *shape {
	root := &shape{}
	for i := range fields {
		at := root
		steps := strings.Split(fields[i].Pattern, "/")[1:]
		for k, step := range steps {
			next := at.child(step)
			if k == len(steps)-1 {
				next.field = &fields[i]
				if fields[i].Needed {
					at.needed = append(at.needed, step)
				}
			}
			at = next
		}
	}
	return root
}

func (s *shape) child(step string) *shape {
	switch step {
	case "*":
		if s.each == nil {
			s.each = &shape{}
		}
		return s.each
	case "#":
		if s.item == nil {
			s.item = &shape{}
		}
		return s.item
	}
	if s.names == nil {
		s.names = map[string]*shape{}
	}
	next := s.names[step]
	if next == nil {
		next = &shape{}
		s.names[step] = next
		s.order = append(s.order, step)
	}
	return next
}

// member returns the shape of a member of a map, nil for a name that this
// version does not know.
func (s *shape) member(name string) *shape {
	if s.each != nil {
		return s.each
	}
	return s.names[name]
}

// step returns the shape one step down a JSON pointer.
func (s *shape) step(name string) *shape {
	switch {
	case s.item != nil:
		if whole(name) {
			return s.item
		}
		return nil
	case s.each != nil && name == "":
		return nil
	}
	return s.member(name)
}

// find returns the shape at a pattern.
func (s *shape) find(pattern string) *shape {
	for _, step := range strings.Split(pattern, "/")[1:] {
		switch {
		case s == nil:
			return nil
		case step == "*":
			s = s.each
		case step == "#":
			s = s.item
		default:
			s = s.names[step]
		}
	}
	return s
}

func whole(s string) bool {
	for i := 0; i < len(s); i++ {
		if !digit(s[i]) {
			return false
		}
	}
	return s != "" && len(s) <= 6
}

// The shapes of the file.
var (
	nowShape     = shapeOf(fields)
	outsideShape = shapeOf(outsideFields)
)
