package dsl

import (
	"bytes"
	"fmt"
	"strings"
	"testing"

	"github.com/alecthomas/participle/v2"
)

// long is the canonical file repeated to 1,500 lines.
func long(b *testing.B) []byte {
	src := canonical(b)
	n := 1500/bytes.Count(src, []byte("\n")) + 1
	all := bytes.SplitAfter(bytes.Repeat(append(src, '\n'), n), []byte("\n"))
	src = bytes.Join(all[:1500], nil)
	return append(src, strings.Repeat("}\n", max(0, lacking(scan(string(src)))))...)
}

func count(body []*Sentence) int {
	n := len(body)
	for _, s := range body {
		n += count(s.Body)
	}
	return n
}

func BenchmarkScan(b *testing.B) {
	src := string(long(b))
	b.ReportAllocs()
	b.SetBytes(int64(len(src)))
	for b.Loop() {
		scan(src)
	}
}

func BenchmarkGroup(b *testing.B) {
	toks := scan(string(long(b)))
	b.ReportAllocs()
	for b.Loop() {
		group(&File{}, toks)
	}
}

// BenchmarkParse also tells the time for each sentence.
func BenchmarkParse(b *testing.B) {
	src := long(b)
	f := Parse("long.seam", src)
	if len(f.Findings) > 0 {
		b.Fatal(f.Findings[0])
	}
	b.ReportAllocs()
	b.SetBytes(int64(len(src)))
	for b.Loop() {
		Parse("long.seam", src)
	}
	b.ReportMetric(float64(b.Elapsed().Nanoseconds())/float64(b.N*count(f.Sentences)), "ns/sentence")
}

func BenchmarkFormat(b *testing.B) {
	src := long(b)
	f := Parse("long.seam", src)
	b.ReportAllocs()
	b.SetBytes(int64(len(src)))
	for b.Loop() {
		Format(f)
	}
}

// BenchmarkBuild builds the parsers of all kinds of sentence that are costly or
// common; a run builds the ones that its file uses, once.
func BenchmarkBuild(b *testing.B) {
	b.Run("Op", buildBench[Op])
	b.Run("Seam", buildBench[Seam])
	b.Run("Cut", buildBench[Cut])
	b.Run("Piece", buildBench[Piece])
	b.Run("Setting", buildBench[Setting])
}

func buildBench[T any](b *testing.B) {
	b.ReportAllocs()
	for b.Loop() {
		participle.MustBuild[T](grammarOptions...)
	}
}

// BenchmarkFirstParse, run alone and with -benchtime 1x, tells what the first file
// of a run costs: it builds the parsers of all kinds of sentence.
func BenchmarkFirstParse(b *testing.B) {
	src := canonical(b)
	for b.Loop() {
		Parse("canonical.seam", src)
	}
}

// hostile is source that is cheap to write and could be dear to read.
var hostile = map[string]func(n int) string{
	"open braces":      func(n int) string { return strings.Repeat("{", n) },
	"closing braces":   func(n int) string { return strings.Repeat("}", n) },
	"quotes":           func(n int) string { return strings.Repeat(`"`, n) },
	"quotes and space": func(n int) string { return strings.Repeat(`" `, n/2) },
	"curly quotes":     func(n int) string { return strings.Repeat(`“"`, n/4) },
	"open quotes":      func(n int) string { return strings.Repeat("a \"b\n", n/5) },
	"quotes on lines":  func(n int) string { return strings.Repeat("\"a\n\n", n/4) },
	"apostrophes":      func(n int) string { return strings.Repeat("' ", n/2) },
	"numbers":          func(n int) string { return strings.Repeat("1 ", n/2) },
	"one word":         func(n int) string { return strings.Repeat("a", n) },
	"words":            func(n int) string { return strings.Repeat("a ", n/2) },
	"list":             func(n int) string { return "piece p { edges " + strings.Repeat("a, ", n/3) + "b }" },
	"sentences":        func(n int) string { return strings.Repeat("a;", n/2) },
	"unknown words":    func(n int) string { return strings.Repeat("abcdefg\n", n/8) },
	"notes":            func(n int) string { return "a b,\n" + strings.Repeat("//\n", n/3) },
	"notes and commas": func(n int) string { return strings.Repeat("a,//\n//\n", n/8) },
	"star comments":    func(n int) string { return strings.Repeat("/*\n", n/3) },
	"fences":           func(n int) string { return strings.Repeat("\"\"\"\n}\na\n", n/8) },
	"fences inside":    func(n int) string { return strings.Repeat("  \"\"\"\n}\na\n", n/10) },
	"brackets":         func(n int) string { return "option a when " + strings.Repeat("(", n) },
	"on a line":        func(n int) string { return "step a {" + strings.Repeat("sew a\n on b\n", n/12) + "}" },
	"spaces":           func(n int) string { return "1" + strings.Repeat(" ", n) + "1" },
	"signs":            func(n int) string { return strings.Repeat("& a\n", n/4) },
	"deep":             func(n int) string { return strings.Repeat(strings.Repeat("a{", 30)+strings.Repeat("}", 30), n/90) },
}

// BenchmarkHostile shows that time grows with the file and no faster: the time
// for each byte must be about the same in both sizes. (A file of more than maxTokens
// words is given up, so that much larger ones cost no more.)
func BenchmarkHostile(b *testing.B) {
	for name, write := range hostile {
		for _, size := range []int{25 << 10, 400 << 10} {
			src := []byte(write(size - 100))
			b.Run(fmt.Sprintf("%s/%dK", strings.ReplaceAll(name, " ", "_"), size>>10), func(b *testing.B) {
				b.SetBytes(int64(len(src)))
				for b.Loop() {
					Format(Parse("hostile.seam", src))
				}
				b.ReportMetric(float64(b.Elapsed().Nanoseconds())/float64(b.N*len(src)), "ns/byte")
			})
		}
	}
}
