package document

import (
	"strconv"
	"strings"
)

// Escape writes a name as one step of a JSON pointer: ~ as ~0 and / as ~1
// (RFC 6901, section 3).
func Escape(name string) string {
	if !strings.ContainsAny(name, "~/") {
		return name
	}
	return strings.ReplaceAll(strings.ReplaceAll(name, "~", "~0"), "/", "~1")
}

// Join returns the JSON pointer of the member name below path.
func Join(path, name string) string { return path + "/" + Escape(name) }

// Split returns the names of a JSON pointer, unescaped. It is not ok where the
// text is no pointer: neither empty nor beginning with /, or with a ~ that
// neither 0 nor 1 follows.
func Split(path string) (names []string, ok bool) {
	for path != "" {
		if path[0] != '/' {
			return nil, false
		}
		name := path[1:]
		if end := strings.IndexByte(name, '/'); end >= 0 {
			name = name[:end]
		}
		path = path[1+len(name):]
		name, ok := unescape(name)
		if !ok {
			return nil, false
		}
		names = append(names, name)
	}
	return names, true
}

// unescape undoes Escape: ~1 before ~0, so that ~01 is ~1 (RFC 6901, section 4).
func unescape(name string) (string, bool) {
	for i := strings.IndexByte(name, '~'); i >= 0 && i < len(name); i++ {
		if name[i] == '~' && (i+1 == len(name) || name[i+1] != '0' && name[i+1] != '1') {
			return "", false
		}
	}
	return strings.ReplaceAll(strings.ReplaceAll(name, "~1", "/"), "~0", "~"), true
}

// At returns the value at a JSON pointer (RFC 6901), or nil where there is
// none or the text is no pointer. "" is n itself.
func (n *Node) At(path string) *Node {
	names, ok := Split(path)
	if !ok {
		return nil
	}
	for _, name := range names {
		if n.Kind() == List {
			n = n.Item(position(name))
		} else {
			n = n.Get(name)
		}
	}
	return n
}

// position reads the place in a list: digits without a leading zero (RFC 6901,
// section 4), else -1.
func position(name string) int {
	if name == "" || len(name) > 9 || name[0] == '0' && len(name) > 1 {
		return -1
	}
	for i := 0; i < len(name); i++ {
		if !isDigit(name[i]) {
			return -1
		}
	}
	i, _ := strconv.Atoi(name)
	return i
}
