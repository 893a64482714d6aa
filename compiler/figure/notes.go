package figure

import (
	"strconv"

	"seamwarden/dsl/finding"
)

// The rules of this package.
const (
	ruleUnreadable    = "figure-unreadable"
	ruleUnsupported   = "figure-unsupported"
	RuleActiveContent = "figure-active-content"
)

const (
	mostErrors  = 100 // findings listed for one file
	mostRelated = 4   // further places listed for one unsupported thing
)

// notes collects findings. A thing that is not drawn is reported once for the
// file, with how often and where else, so that one habit of a drawing program
// does not bury the rest.
type notes struct {
	list    []finding.Finding
	groups  map[string]*group
	ordered []*group
	dropped int
}

// group is one thing that is not drawn, and where.
type group struct {
	found finding.Finding
	count int
}

func (n *notes) add(f finding.Finding) {
	if len(n.list) >= mostErrors {
		n.dropped++
		return
	}
	n.list = append(n.list, f)
}

// unsupported notes one place of a thing that is not drawn.
func (n *notes) unsupported(key string, at finding.Span, f feature) {
	if g := n.groups[key]; g != nil {
		g.count++
		if len(g.found.Related) < mostRelated {
			g.found.Related = append(g.found.Related, finding.Place{Span: at, Label: "and here"})
		}
		return
	}
	if len(n.ordered) >= mostErrors {
		n.dropped++
		return
	}
	if n.groups == nil {
		n.groups = map[string]*group{}
	}
	g := &group{count: 1, found: finding.Finding{
		Rule: ruleUnsupported, Severity: finding.Warning, Headline: f.headline,
		Place: finding.Place{Span: at, Label: f.label}, Help: f.help,
		Why: "The booklet and the web page set a figure from lines, fills and words alone.",
	}}
	n.groups[key] = g
	n.ordered = append(n.ordered, g)
}

// all gives every finding in the order of its place.
func (n *notes) all(file string) []finding.Finding {
	out := n.list
	for _, g := range n.ordered {
		if g.count > 1 {
			g.found.Headline += " (" + strconv.Itoa(g.count) + " times)"
		}
		g.found.Headline += "."
		out = append(out, g.found)
	}
	if n.dropped > 0 {
		out = append(out, finding.Finding{
			Rule: ruleUnreadable, Severity: finding.Error,
			Headline: strconv.Itoa(n.dropped) + " more problems in this figure are not listed.",
			Place:    finding.Place{Span: finding.Span{File: file}, Label: "in this file"},
			Help:     "Mend those that are listed, then check again.",
		})
	}
	finding.Sort(out)
	return out
}
