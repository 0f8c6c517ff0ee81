// Package tally is a small core for the tests of the page's platform: it keeps
// typed values by path and answers the same verbs as the real core, so that
// these tests do not depend on what the real core thinks of a value.
//
// Some texts make it misbehave on purpose: "panic", "fault", "recursion" and
// "silence". Typed at the path "open" or "save" they wait for that verb.
package tally

import "encoding/json"

// Core holds documents by name.
type Core struct {
	docs map[string]*document
	// Calls counts the calls answered in this life.
	Calls int
}

type document struct {
	Format  string            `json:"format"`
	Job     string            `json:"job"`
	Now     map[string]string `json:"now"`
	Pending []request         `json:"pending,omitempty"`
}

type request struct {
	Verb  string          `json:"verb"`
	Doc   string          `json:"doc"`
	As    string          `json:"as"`
	Do    string          `json:"do"`
	Path  string          `json:"path"`
	Text  string          `json:"text"`
	IDs   []string        `json:"ids"`
	Show  json.RawMessage `json:"show"`
	Bytes string          `json:"bytes64"`
}

// New returns a core that holds nothing.
func New() *Core { return &Core{docs: map[string]*document{}} }

// Call answers one request.
func (c *Core) Call(text string, data []byte) (string, []byte) {
	c.Calls++
	var r request
	if err := json.Unmarshal([]byte(text), &r); err != nil {
		return refused("the request is not JSON"), nil
	}
	if r.Verb == "open" {
		return c.open(r, data), nil
	}
	doc := c.docs[r.Doc]
	if doc == nil {
		return refused("this document is not open"), nil
	}
	switch r.Verb {
	case "enter":
		if answer := doc.enter(r); answer != "" {
			return answer, nil
		}
		if r.Show != nil {
			return reply(map[string]any{"ok": true, "view": doc.Now}), nil
		}
		return reply(map[string]any{"ok": true}), nil
	case "show":
		misbehave(r.Text)
		return reply(map[string]any{"ok": true, "now": doc.Now}), nil
	case "save":
		misbehave(doc.Now["save"])
		out, err := json.Marshal(doc)
		if err != nil {
			return refused(err.Error()), nil
		}
		return reply(map[string]any{"ok": true, "name": "tally.json", "title": doc.Now["title"]}), out
	case "close":
		delete(c.docs, r.Doc)
		return reply(map[string]any{"ok": true}), nil
	}
	return refused("there is no such verb"), nil
}

func (c *Core) open(r request, data []byte) string {
	doc := &document{Format: "tally", Job: r.Doc}
	if r.As == "file" {
		doc = &document{}
		if json.Unmarshal(data, doc) != nil || doc.Format != "tally" {
			return refused("this is no tally")
		}
	}
	if doc.Now == nil {
		doc.Now = map[string]string{}
	}
	misbehave(doc.Now["open"])
	for _, entry := range doc.Pending {
		doc.enter(entry)
	}
	doc.Pending = nil
	c.docs[r.Doc] = doc
	return reply(map[string]any{"ok": true, "job": doc.Job, "title": doc.Now["title"]})
}

func (d *document) enter(r request) string {
	// At these paths the text is for later: see open and save.
	if r.Path != "open" && r.Path != "save" {
		if r.Text == "fault" {
			return `{"ok":false,"fault":true,"says":"a fault on purpose"}`
		}
		misbehave(r.Text)
	}
	d.Now[r.Path] = r.Text
	return ""
}

// misbehave does what the text says.
func misbehave(text string) {
	switch text {
	case "panic":
		panic("a panic on purpose")
	case "recursion":
		println(deeper(1))
	case "silence":
		for {
		}
	}
}

// deeper never ends: it runs out of stack.
func deeper(n int) int {
	if n < 0 {
		return 0
	}
	return deeper(n+1) + deeper(n+2)
}

func refused(says string) string { return reply(map[string]any{"ok": false, "says": says}) }

func reply(v any) string {
	text, err := json.Marshal(v)
	if err != nil {
		panic(err)
	}
	return string(text)
}
