package document

// MergePatch applies a patch as RFC 7396 says: members of a patch that is a
// map are merged into the target, null removes a member, any other value
// replaces, and lists are replaced as a whole.
//
// Where target and patch are both maps, target is changed in place and
// returned, at the cost of the patch only; what is replaced is dropped, not
// changed. Otherwise the result is new and target is left alone. Target may be
// nil. The result shares no map and no list with the patch, so that a patch
// that is kept stays as it is.
//
// A member that is removed and set again stands at the end of its map.
func MergePatch(target, patch *Node) *Node {
	if patch.Kind() != Map {
		return patch.Clone()
	}
	if target.Kind() != Map {
		if !removes(patch) {
			return patch.Clone()
		}
		target = NewMap()
	}
	for name, value := range patch.Members() {
		if value.Kind() == Null {
			target.Remove(name)
			continue
		}
		before := target.Get(name)
		if after := MergePatch(before, value); after != before {
			target.Set(name, after)
		}
	}
	return target
}

// removes reports whether a patch removes a member anywhere.
func removes(patch *Node) bool {
	for _, value := range patch.Members() {
		if value.Kind() == Null || removes(value) {
			return true
		}
	}
	return false
}

// Inverse returns the patch that undoes a patch. It is to be called before
// [MergePatch], with the same target:
//
//	was := Inverse(x, p)
//	y := MergePatch(x, p)
//	MergePatch(y, was) // as x was
//
// It has the members of the patch and, for each, the value that stood in
// target; null says that there was none. A member that the patch removes and
// target does not have is left out, and so is a map in which nothing is left.
// Inverse costs as much as the patch and what it replaces. The result shares
// no map and no list with target or patch.
//
// The law holds for targets whose maps hold no null, which a merge patch
// cannot express, and up to the order of members. Where target or patch is no
// map, the inverse is a copy of target.
func Inverse(target, patch *Node) *Node {
	if target.Kind() == Absent {
		return NewNull()
	}
	if patch.Kind() != Map || target.Kind() != Map {
		return target.Clone()
	}
	was := NewMap()
	for name, value := range patch.Members() {
		before := target.Get(name)
		switch {
		case before == nil && value.Kind() == Null:
		case before.Kind() == Map && value.Kind() == Map:
			if inner := Inverse(before, value); inner.Len() > 0 {
				was.Set(name, inner)
			}
		default:
			was.Set(name, Inverse(before, value))
		}
	}
	return was
}
