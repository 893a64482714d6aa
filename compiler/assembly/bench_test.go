package assembly_test

import (
	"fmt"
	"strings"
	"testing"

	"seamwarden/compiler/assembly"
	"seamwarden/compiler/model"
)

// manyOptions writes a pattern in which each of n options adds a small piece to the
// body, with its seam and its steps; and how many declarations that makes.
func manyOptions(n int) (src string, declarations int) {
	var head, seams, steps strings.Builder
	edges := []string{"top"}
	for k := range n {
		edges = append(edges, fmt.Sprint("edge-", k), fmt.Sprint("rest-", k))
		fmt.Fprintf(&head, "option opt-%d \"Option\"\n\npiece flap-%d when opt-%d {\n  edges attach, p-%d, rim, q-%d\n  cut 2 main right side up as upper, under\n  cut 1 fusing glue side up\n}\n\n", k, k, k, k, k)
		fmt.Fprintf(&seams, "seam round-%d joins flap-%d.upper.rim to flap-%d.under.rim\n\nseam on-%d joins flap-%d.upper.attach to body.edge-%d catching flap-%d.under.attach\n\n", k, k, k, k, k, k, k)
		fmt.Fprintf(&steps, "step make-%d \"Make\" {\n  fuse flap-%d\n  sew round-%d\n  trim round-%d to 5mm\n  turn flap-%d\n  press flap-%d\n  topstitch round-%d 5mm\n}\n\n", k, k, k, k, k, k, k)
		fmt.Fprintf(&steps, "step on-%d \"Sew on\" {\n  sew on-%d\n  finish on-%d together with overlock\n  press on-%d toward body\n}\n\n", k, k, k, k)
	}
	body := fmt.Sprintf("piece body {\n  edges %s\n  cut 1 main right side up\n}\n\n", strings.Join(edges, ", "))
	return "pattern \"Options\" { allow 1cm }\n\nfabric main \"Main\" { widths 140cm }\n\ninterfacing fusing \"Interfacing\" fusible { widths 90cm }\n\n" +
		body + head.String() + seams.String() + steps.String(), 4 + 14*n
}

// The cost of each pass must stay near linear: compare ns/declaration of 20 options
// with that of 2.
//
//	go test ./compiler/assembly -run xxx -bench Options
func BenchmarkOptions(b *testing.B) {
	passes := []struct {
		name string
		run  func(*model.Pattern)
	}{
		{"play", func(p *model.Pattern) { assembly.Play(p) }},
		{"hands", func(p *model.Pattern) { assembly.Hands(p) }},
		{"loose", func(p *model.Pattern) { assembly.Loose(p, assembly.Gather(p)) }},
	}
	for _, x := range passes {
		for _, n := range []int{2, 5, 10, 20} {
			b.Run(fmt.Sprintf("%s/%d", x.name, n), func(b *testing.B) {
				src, declarations := manyOptions(n)
				p := build(b, src)
				b.ReportAllocs()
				for b.Loop() {
					x.run(p)
				}
				b.ReportMetric(float64(b.Elapsed().Nanoseconds())/float64(b.N)/float64(declarations), "ns/declaration")
			})
		}
	}
}

// TestConditionsStayFew counts the nodes of decision diagrams that the passes make:
// for each declaration no more than three times as many with 20 options as with 2.
// The garments grow from 4 to a million.
func TestConditionsStayFew(t *testing.T) {
	nodes := map[int]float64{}
	for _, n := range []int{2, 5, 10, 20} {
		src, declarations := manyOptions(n)
		p := build(t, src)
		before := p.Space.Nodes()
		if x := assembly.Play(p); len(x) > 0 {
			t.Fatalf("%s", said(x[0]))
		}
		assembly.Hands(p)
		assembly.Loose(p, assembly.Gather(p))
		nodes[n] = float64(p.Space.Nodes()-before) / float64(declarations)
		t.Logf("%d options: %.2f nodes for each declaration, %d in all", n, nodes[n], p.Space.Nodes())
		if p.Space.Overflowed() {
			t.Error("the space of conditions ran into its limit")
		}
	}
	if nodes[20] > 3*max(nodes[2], 1) {
		t.Errorf("%.2f nodes for each declaration with 20 options, and %.2f with 2", nodes[20], nodes[2])
	}
}
