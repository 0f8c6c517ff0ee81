package document

import (
	"crypto/sha256"
	"os"
	"runtime"
	"strconv"
	"sync"
	"testing"
)

// largeJob is an invented file of the shape and size that the budgets are
// written for: 5,000 piles with 60 readings each, and 20,000 edits.
var largeJob = sync.OnceValue(func() string {
	id := func(kind string, i int) string {
		digits := strconv.Itoa(1_000_000 + i)
		return "01920000-" + kind + "-7000-8000-00000" + digits
	}
	text := func(name, value string) *Node { return object(name, NewText(value)) }
	piles, records, entries := NewMap(), NewMap(), NewList()
	for i := range 5000 {
		pile := text("mark", "C"+strconv.Itoa(i+1))
		for _, m := range [][2]string{{"type", id("0001", 1)}, {"workingLoad", "900 kN"}, {"platform", "12.60 m"}, {"founding", "-5.40 m"},
			{"cutoff", "11.20 m"}, {"east", "512345.25 m"}, {"north", "7412345.75 m"}, {"block", "north quay"}} {
			pile.Set(m[0], NewText(m[1]))
		}
		piles.Set(id("0002", i), pile)
		lines := NewList()
		for j := range 60 {
			lines.Append(NewText(strconv.Itoa(i*60+j) + " " + strconv.Itoa(j/2) + "." + strconv.Itoa(j%2*5) + "0 " + strconv.Itoa(j/4) + ".5"))
		}
		part := text("columns", "s m MPa")
		part.Set("lines", lines)
		part.Set("events", NewList(object("s", NewInt(0), "is", NewText("set-up"), "rig", NewText(id("0003", 1))),
			object("s", NewInt(20), "is", NewText("segment"), "length", NewText("6.00 m"))))
		record := object("kind", NewText("drive"), "pile", NewText(id("0002", i)))
		record.Set("parts", object(id("0004", 1), part))
		records.Set(id("0005", i), record)
	}
	for i := range 20_000 {
		pile := id("0002", i*7919%5000)
		edit := func(value string) *Node { return object("piles", object(pile, text("workingLoad", value))) }
		entries.Append(object("s", NewInt(i), "patch", edit("900 kN"), "was", edit("850 kN"), "why", NewText("issue B of the drawing")))
	}
	sitting := object("who", NewText("A"), "on", NewText("phone"), "seen", NewMap(), "entries", entries)
	return string(object("format", NewText("a job"), "schema", NewInt(1), "now", object("title", NewText("Quay"), "piles", piles),
		"records", records, "sittings", object(id("0004", 1), sitting)).Stable())
})

// object makes a map of names and nodes in turn.
func object(members ...any) *Node {
	n := NewMap()
	for i := 0; i < len(members); i += 2 {
		n.Set(members[i].(string), members[i+1].(*Node))
	}
	return n
}

func heap() uint64 {
	runtime.GC()
	var m runtime.MemStats
	runtime.ReadMemStats(&m)
	return m.HeapAlloc
}

func BenchmarkRead(b *testing.B) {
	text := largeJob()
	before := heap()
	kept, _ := ReadText(text)
	tree := heap() - before
	runtime.KeepAlive(kept)
	kept = nil
	b.SetBytes(int64(len(text)))
	b.ReportAllocs()
	for b.Loop() {
		if n, _ := ReadText(text); n == nil {
			b.Fatal("refused")
		}
	}
	b.ReportMetric(float64(tree)/(1<<20), "MiB-tree")
	b.ReportMetric(float64(len(text))/(1<<20), "MiB-text")
}

func BenchmarkReadBytes(b *testing.B) {
	data := []byte(largeJob())
	b.SetBytes(int64(len(data)))
	for b.Loop() {
		if n, _ := Read(data); n == nil {
			b.Fatal("refused")
		}
	}
}

func BenchmarkStable(b *testing.B) {
	n, _ := ReadText(largeJob())
	b.SetBytes(int64(len(largeJob())))
	b.ReportAllocs()
	for b.Loop() {
		n.Stable()
	}
}

func BenchmarkDigest(b *testing.B) {
	n, _ := ReadText(largeJob())
	b.SetBytes(int64(len(largeJob())))
	for b.Loop() {
		Digest(n)
	}
}

// All 20,000 edits folded into the piles, each with its inverse.
func BenchmarkFold(b *testing.B) {
	n, _ := ReadText(largeJob())
	_, sitting := n.Get("sittings").Member(0)
	now := n.Get("now").Clone()
	for b.Loop() {
		for _, entry := range sitting.Get("entries").Items() {
			Inverse(now, entry.Get("patch"))
			now = MergePatch(now, entry.Get("patch"))
		}
	}
}

func BenchmarkCheck(b *testing.B) {
	n, _ := ReadText(largeJob())
	for b.Loop() {
		Check(n)
	}
}

// A file of the usual size, for setting the browser's figures beside the native ones.
func example(b *testing.B) []byte {
	data, err := os.ReadFile("../../examples/quay-shed.json")
	if err != nil {
		b.Fatal(err)
	}
	b.SetBytes(int64(len(data)))
	return data
}

func BenchmarkReadExample(b *testing.B) {
	data := example(b)
	for b.Loop() {
		if n, _ := Read(data); n == nil {
			b.Fatal("refused")
		}
	}
}

func BenchmarkDigestExample(b *testing.B) {
	n, _ := Read(example(b))
	for b.Loop() {
		Digest(n)
	}
}

func BenchmarkHashExample(b *testing.B) {
	data := example(b)
	for b.Loop() {
		sha256.Sum256(data)
	}
}
