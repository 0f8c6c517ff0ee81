package document

import (
	"strconv"
	"strings"
)

// Check complains about what [Read] would refuse in [Node.Stable] of the tree:
// names equal but for case, and more than [MaxDepth] levels. It does not look
// at the size. Lines are 0. It costs as much as the tree.
func Check(n *Node) Complaints {
	c := checker{}
	c.tree(n, 0)
	return c.complaints()
}

// CheckPatch complains about what [MergePatch] would put into target and
// [Read] would then refuse: a name that differs from one in target in case
// only, and more than [MaxDepth] levels, of which above are those around
// target in its file. Paths are relative to target, lines are 0. It costs as
// much as the patch, and as the maps that get a new name. The patch itself is
// taken to be one that Read or [Check] has accepted.
func CheckPatch(target, patch *Node, above int) Complaints {
	c := checker{}
	c.patch(target, patch, above)
	return c.complaints()
}

// checker collects in the order of the tree: the offset is a running number.
type checker struct {
	collector
	steps  []step
	hashes []uint32
}

func (c *checker) say(complaint func(path string) Complaint) {
	c.add(c.count, func() Complaint { return complaint(pathOf(c.steps)) })
}

// tooDeep complains about a map or list with depth levels around it, if it is
// one level too many.
func (c *checker) tooDeep(n *Node, depth int) bool {
	if n.content() == nil || depth < MaxDepth {
		return false
	}
	c.say(func(path string) Complaint {
		return Complaint{Code: CodeDepth, Path: path, Found: strconv.Itoa(depth + 1), Allowed: strconv.Itoa(MaxDepth)}
	})
	return true
}

func (c *checker) tree(n *Node, depth int) {
	if n.content() == nil || c.tooDeep(n, depth) {
		return
	}
	names := n.names()
	c.hashes = c.hashes[:0]
	for _, name := range names {
		c.hashes = append(c.hashes, foldHash(name))
	}
	if mayHaveTwins(c.hashes) {
		for _, t := range twins(names) {
			c.say(func(path string) Complaint { return twinComplaint(path, names, t) })
		}
	}
	nodes := n.content().nodes
	for i := range nodes {
		node := &nodes[i]
		if node.content() == nil {
			continue
		}
		here := step{list: true, at: i}
		if names != nil {
			here = step{name: names[i]}
		}
		c.steps = append(c.steps, here)
		c.tree(node, depth+1)
		c.steps = c.steps[:len(c.steps)-1]
	}
}

func (c *checker) patch(target, patch *Node, depth int) {
	if patch.Kind() != Map {
		c.tree(patch, depth)
		return
	}
	if c.tooDeep(patch, depth) {
		return
	}
	for name, value := range patch.Members() {
		if value.Kind() == Null {
			continue
		}
		before := target.Get(name)
		if before == nil && target.Kind() == Map {
			for other := range target.Members() {
				if strings.EqualFold(other, name) && patch.Get(other).Kind() != Null {
					c.say(func(path string) Complaint { return twinComplaint(path, []string{other, name}, twin{at: 1}) })
				}
			}
		}
		c.steps = append(c.steps, step{name: name})
		c.patch(before, value, depth+1)
		c.steps = c.steps[:len(c.steps)-1]
	}
}
