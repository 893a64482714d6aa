package finding

import (
	"slices"
	"strings"
	"testing"
)

func stretch(from, to int) Span {
	return Span{File: "a.seam", Start: Pos{from, 1, from + 1}, End: Pos{to, 1, to + 1}}
}

func found(rule string, from, to int) Finding {
	return Finding{Rule: rule, Place: Place{Span: stretch(from, to)}}
}

func accept(rule, reason string, covers Span) Acceptance {
	return Acceptance{Rule: rule, Reason: reason, Covers: covers, At: stretch(0, 5), RuleAt: stretch(1, 4)}
}

func rules(fs []Finding) string {
	var names []string
	for _, f := range fs {
		names = append(names, f.Rule)
	}
	return strings.Join(names, " ")
}

func TestAccept(t *testing.T) {
	known := []string{"piece-never-used", "edge-left-raw"}
	other := stretch(10, 20)
	other.File = "b.seam"
	whole := Finding{Rule: "edge-left-raw", Place: Place{Span: Span{File: "a.seam"}}}
	cases := []struct {
		name                 string
		fs                   []Finding
		as                   []Acceptance
		partial              bool
		kept, accepted, more string
	}{
		{"nothing", nil, nil, false, "", "", ""},
		{"accepted", []Finding{found("edge-left-raw", 12, 15)}, []Acceptance{accept("edge-left-raw", "r", stretch(10, 20))}, false, "", "edge-left-raw", ""},
		{"begins inside, ends outside", []Finding{found("edge-left-raw", 19, 30)}, []Acceptance{accept("edge-left-raw", "r", stretch(10, 20))}, false, "", "edge-left-raw", ""},
		{"of another rule", []Finding{found("piece-never-used", 12, 15)}, []Acceptance{accept("edge-left-raw", "r", stretch(10, 20))}, false, "piece-never-used", "", AcceptanceUnused},
		{"before it", []Finding{found("edge-left-raw", 9, 12)}, []Acceptance{accept("edge-left-raw", "r", stretch(10, 20))}, false, "edge-left-raw", "", AcceptanceUnused},
		{"after it", []Finding{found("edge-left-raw", 20, 22)}, []Acceptance{accept("edge-left-raw", "r", stretch(10, 20))}, false, "edge-left-raw", "", AcceptanceUnused},
		{"missing at its end", []Finding{found("edge-left-raw", 20, 20)}, []Acceptance{accept("edge-left-raw", "r", stretch(10, 20))}, false, "", "edge-left-raw", ""},
		{"another file", []Finding{found("edge-left-raw", 12, 15)}, []Acceptance{accept("edge-left-raw", "r", other)}, false, "edge-left-raw", "", AcceptanceUnused},
		{"a whole file", []Finding{whole}, []Acceptance{accept("edge-left-raw", "r", stretch(0, 20))}, false, "edge-left-raw", "", AcceptanceUnused},
		{"one for several", []Finding{found("edge-left-raw", 12, 13), found("edge-left-raw", 14, 15)}, []Acceptance{accept("edge-left-raw", "r", stretch(10, 20))}, false, "", "edge-left-raw edge-left-raw", ""},
		{"without a reason: one warning in its place", []Finding{found("edge-left-raw", 12, 15)}, []Acceptance{accept("edge-left-raw", "", stretch(10, 20))}, false, "", "edge-left-raw", AcceptanceWithoutReason},
		{"without a reason and unused: one warning", nil, []Acceptance{accept("edge-left-raw", "", stretch(10, 20))}, false, "", "", AcceptanceUnused},
		{"of an unknown rule", []Finding{found("edge-left-row", 12, 15)}, []Acceptance{accept("edge-left-row", "", stretch(10, 20))}, false, "edge-left-row", "", AcceptanceUnknown},
		{"unused, but not all could be read", nil, []Acceptance{accept("edge-left-raw", "r", stretch(10, 20))}, true, "", "", ""},
		{"unknown, though not all could be read", nil, []Acceptance{accept("edge-left-row", "r", stretch(10, 20))}, true, "", "", AcceptanceUnknown},
		{"nowhere", []Finding{found("edge-left-raw", 0, 0)}, []Acceptance{accept("edge-left-raw", "r", Span{File: "a.seam"})}, false, "edge-left-raw", "", AcceptanceUnused},
	}
	for _, c := range cases {
		kept, accepted, more := Accept(c.fs, c.as, known, !c.partial)
		var names []Finding
		for _, a := range accepted {
			names = append(names, a.Finding)
		}
		if rules(kept) != c.kept || rules(names) != c.accepted || rules(more) != c.more {
			t.Errorf("%s: kept %q, accepted %q, more %q; want %q, %q, %q", c.name, rules(kept), rules(names), rules(more), c.kept, c.accepted, c.more)
		}
	}
}

func TestInnermostAccepts(t *testing.T) {
	outer, inner := accept("edge-left-raw", "the whole piece", stretch(0, 50)), accept("edge-left-raw", "this edge", stretch(10, 20))
	for _, as := range [][]Acceptance{{outer, inner}, {inner, outer}} {
		_, accepted, more := Accept([]Finding{found("edge-left-raw", 12, 15)}, as, []string{"edge-left-raw"}, true)
		if len(accepted) != 1 || accepted[0].By.Reason != "this edge" || len(more) != 0 {
			t.Errorf("%+v, %+v", accepted, more)
		}
	}
}

func TestWhatIsSaidOfAcceptances(t *testing.T) {
	const src = "// accept edge-left-row: it frays by design"
	a := Acceptance{Rule: "edge-left-row", Reason: "it frays by design",
		At:     Span{"a.seam", Pos{0, 1, 1}, Pos{len(src), 1, len(src) + 1}},
		RuleAt: Span{"a.seam", Pos{10, 1, 11}, Pos{23, 1, 24}}}
	_, _, more := Accept(nil, []Acceptance{a}, []string{"edge-left-raw", "piece-never-used"}, true)
	if len(more) != 1 || more[0].Help != "Did you mean edge-left-raw?" || more[0].Edits[0].Certain {
		t.Fatalf("%+v", more)
	}
	mended, err := Apply(src, more[0].Edits)
	if err != nil || mended != "// accept edge-left-raw: it frays by design" {
		t.Errorf("%q, %v", mended, err)
	}
	_, _, more = Accept(nil, []Acceptance{a}, []string{a.Rule}, true)
	if rest, err := Apply(src, more[0].Edits); err != nil || rest != "" {
		t.Errorf("of the deleted remark %q is left, %v", rest, err)
	}
	_, _, far := Accept(nil, []Acceptance{a}, []string{"piece-never-used"}, true)
	if far[0].Edits != nil || !strings.HasPrefix(far[0].Help, "Write the name") {
		t.Errorf("a far name was guessed: %+v", far)
	}
	for _, f := range slices.Concat(more, far) {
		if f.Severity != Warning || f.Why == "" || f.Place.Label == "" || f.Place.Start.Line == 0 {
			t.Errorf("%+v", f)
		}
	}
}
