package size

import (
	"encoding/json"
	"errors"
	"math/big"
	"os"
	"reflect"
	"strconv"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"seamwarden/compiler/measure"
	"seamwarden/dsl/finding"
)

// The file testdata/choose.json holds tables and cases for any program that chooses a
// size by the rule of choose.go, in whole nanometres.
type goldenFile struct {
	Tables map[string]goldenTable
	Cases  []struct {
		Table, Why string
		Own        map[string]int64
		Want       goldenWant
	}
}

type goldenTable struct {
	Lead   string
	Way    Between
	Drafts []struct {
		Name           string
		Sizes          []string
		Body, Finished []goldenRow
	}
}

type goldenRow struct {
	Key, Over      string
	Values, Limits []int64
}

type goldenWant struct {
	Error   string
	Choices []goldenChoice
	Best    int
	Tied    bool
	Ask     []string
}

type goldenChoice struct {
	Draft, Size string
	Misses      int64
	Fits        []goldenFit
}

type goldenFit struct {
	Key, Size string
	Where     Where
	Off       int64
	Beyond    int64
	Between   []string
	Easy      bool
	Ease      []struct {
		Key         string
		Here, Meant int64
	}
}

func nm(n int64) measure.Length { return measure.Of(n, 1_000_000, measure.Millimetre) }

func toNM(t *testing.T, l measure.Length) int64 {
	r := new(big.Rat).Mul(l.Rat(), big.NewRat(1_000_000, 1))
	if !r.IsInt() {
		t.Fatalf("%v is no whole number of nanometres", l)
	}
	return r.Num().Int64()
}

func nms(list []int64) (out []measure.Length) {
	for _, n := range list {
		out = append(out, nm(n))
	}
	return
}

// chart makes a chart of a table.
func (g goldenTable) chart() *Chart {
	c := &Chart{Unit: measure.Millimetre, Choose: Choosing{By: g.Lead, Between: g.Way}}
	rows := func(list []goldenRow, part Part) (out []Row) {
		for _, r := range list {
			row := Row{Part: part, Key: r.Key, Name: r.Key, Over: r.Over, Values: nms(r.Values), Limits: nms(r.Limits)}
			for range r.Values {
				row.ValueSpans = append(row.ValueSpans, finding.Span{File: "x"})
				row.texts = append(row.texts, "")
			}
			out = append(out, row)
		}
		return
	}
	for _, d := range g.Drafts {
		x := Draft{Key: d.Name, Name: d.Name, Chart: &Chart{Sizes: d.Sizes, Body: rows(d.Body, BodyPart), Finished: rows(d.Finished, FinishedPart)}}
		for _, s := range d.Sizes {
			if c.Index(s) < 0 {
				c.Sizes = append(c.Sizes, s)
			}
		}
		if len(g.Drafts) == 1 {
			c.Body, c.Finished = x.Body, x.Finished
		} else {
			c.Drafts = append(c.Drafts, x)
		}
	}
	return c
}

func told(t *testing.T, c *Chosen, err error) (out goldenWant) {
	switch {
	case errors.Is(err, ErrNoLead):
		return goldenWant{Error: "lead"}
	case err != nil:
		t.Fatal(err)
	}
	out = goldenWant{Best: c.Best, Tied: c.Tied, Ask: append([]string{}, c.Ask...)}
	for _, ch := range c.Choices {
		sizes := ch.Version.Sizes
		g := goldenChoice{Draft: ch.Version.Key, Size: sizes[ch.Size], Misses: toNM(t, ch.Misses)}
		for _, f := range ch.Fits {
			x := goldenFit{Key: f.Key, Size: sizes[f.Size], Where: f.Where, Off: toNM(t, f.Off), Beyond: toNM(t, f.Beyond), Easy: f.Easy}
			if f.Between {
				x.Between = sizes[f.Lower : f.Lower+2]
			}
			x.Ease = make([]struct {
				Key         string
				Here, Meant int64
			}, len(f.Ease))
			for i, e := range f.Ease {
				x.Ease[i].Key, x.Ease[i].Here, x.Ease[i].Meant = e.Row.Key, toNM(t, e.Here), toNM(t, e.Meant)
			}
			g.Fits = append(g.Fits, x)
		}
		out.Choices = append(out.Choices, g)
	}
	return out
}

func golden(t testing.TB) goldenFile {
	src, err := os.ReadFile("testdata/choose.json")
	if err != nil {
		t.Fatal(err)
	}
	var g goldenFile
	if err := json.Unmarshal(src, &g); err != nil {
		t.Fatal(err)
	}
	return g
}

// TestChoiceCases holds the choice to the cases, which a second program worked out
// from the words of the rule.
func TestChoiceCases(t *testing.T) {
	g := golden(t)
	if len(g.Cases) < 100 {
		t.Errorf("only %d cases", len(g.Cases))
	}
	for i, c := range g.Cases {
		own := Body{}
		for k, v := range c.Own {
			own[k] = nm(v)
		}
		chosen, err := g.Tables[c.Table].chart().Choice(own)
		if got := told(t, chosen, err); !reflect.DeepEqual(got, c.Want) {
			t.Errorf("case %d of %s, %s:\n got %+v\nwant %+v", i+1, c.Table, c.Why, got, c.Want)
		}
	}
}

// TestLead: which measure leads. ISO 8559-2:2017, table 1 (read in a public note): women's
// tops bust, women's skirts hip, men's tops chest, all children's clothing height.
func TestLead(t *testing.T) {
	for _, c := range []struct {
		rows, more string
		children   bool
		want       string
		way        Between
	}{
		{rows: "waist, hip, bust", want: "bust", way: Nearest},
		{rows: "waist, hip", want: "hip", way: Nearest},
		{rows: "neck, waist, chest", want: "chest", way: Nearest},
		{rows: "waist, inside-leg", want: "waist", way: Nearest},
		{rows: "chest, height", children: true, want: "height", way: Larger},
		{rows: "chest, height", want: "chest", way: Nearest},
		{rows: "thigh, calf", want: "thigh", way: Nearest},
		{rows: "waist, hip", more: "choose: { by: waist, between: smaller }\n", want: "waist", way: Smaller},
	} {
		src := "unit: cm\nsizes: [S, M, L]\n" + c.more + "body:\n"
		for i, key := range splitKeys(c.rows) {
			v := 60 + 5*i
			src += "  " + key + ": { values: [" + itoa(v) + ", " + itoa(v+4) + ", " + itoa(v+8) + "] }\n"
		}
		x := chart(t, src)
		x.Choose.Children = c.children
		if x.Lead() != c.want || x.Way() != c.way {
			t.Errorf("%s: %s leads, %s; want %s, %s", c.rows, x.Lead(), x.Way(), c.want, c.way)
		}
	}
	named := chart(t, "unit: cm\nsizes: [92, 98, 104]\nbody:\n  chest: { values: [54, 55, 56] }\n  height: { values: [92, 98, 104] }\n")
	if named.Lead() != "height" || named.Way() != Larger {
		t.Errorf("sizes that are heights: %s leads, %s", named.Lead(), named.Way())
	}
}

// TestMoreIsNeverASmallerSize: a larger leading measure never gives a smaller size, and
// somebody with a size's own measures is given that size.
func TestMoreIsNeverASmallerSize(t *testing.T) {
	g := golden(t)
	rapid.Check(t, func(rt *rapid.T) {
		name := rapid.SampledFrom(sortedKeys(g.Tables)).Draw(rt, "table")
		c := g.Tables[name].chart()
		a := rapid.Int64Range(400_000_000, 2_000_000_000).Draw(rt, "a")
		b := rapid.Int64Range(a, 2_100_000_000).Draw(rt, "b")
		x, errX := c.Choice(Body{c.Lead(): nm(a)})
		y, errY := c.Choice(Body{c.Lead(): nm(b)})
		if errX != nil || errY != nil {
			rt.Fatal(errX, errY)
		}
		for i := range x.Choices {
			if x.Choices[i].Size > y.Choices[i].Size {
				rt.Errorf("%s: %d nm is size %d, %d nm is size %d", name, a, x.Choices[i].Size, b, y.Choices[i].Size)
			}
		}
	})
	for name, table := range g.Tables {
		for _, d := range table.chart().Versions() {
			for i := range d.Sizes {
				own := Body{}
				for _, row := range d.Body {
					own[row.Key] = row.Values[i]
				}
				ch, err := table.chart().Choice(own)
				if err != nil {
					t.Fatal(err)
				}
				if got := ch.Choices[ch.Best]; got.Version.Key != d.Key || got.Size != i || !got.Misses.IsZero() || got.Lead().Between {
					t.Errorf("%s: the measures of %s %s give %s %s", name, d.Key, d.Sizes[i], got.Version.Key, got.Version.Sizes[got.Size])
				}
			}
		}
	}
}

func splitKeys(s string) []string { return strings.Split(s, ", ") }

func itoa(n int) string { return strconv.Itoa(n) }
