package check

import (
	"fmt"

	"seamwarden/compiler/model"
)

// bastedElsewhere compares where a part is basted with the seams that take it.
func bastedElsewhere(r *run) {
	for op := range r.opsOf("baste") {
		p := op.Phrase("to")
		if p == nil {
			continue
		}
		for _, o := range op.Objects {
			o.Each(func(t *model.Target) {
				for _, to := range p.Targets {
					to.Each(func(a *model.Target) {
						takes, fits := false, false
						for _, s := range r.Seams {
							if !takenBy(s, t) {
								continue
							}
							takes = true
							fits = fits || len(s.Copies) == 0 // it is not known what it joins
							for _, u := range a.Uses {
								fits = fits || usesEdge(s, u)
							}
						}
						if takes && !fits && len(a.Uses) > 0 {
							r.report(r.Space.And(op.Cond, a.Cond), at(a.Span, "another place", fmt.Sprintf("%s is basted to %s, and the seam that takes it is elsewhere.", Upper(t.Describe()), a.Describe()),
								"Baste it to the edge that the seam takes it with."))
						}
					})
				}
			})
		}
	}
}

// takenBy reports whether a seam takes a target, sewn or caught.
func takenBy(s *model.Seam, t *model.Target) bool {
	for _, c := range s.Catching {
		found := false
		c.Target.Each(func(x *model.Target) {
			found = found || x.Path == t.Path || x.Notion != nil && x.Notion == t.Notion && x.NotionBit == t.NotionBit
		})
		if found {
			return true
		}
	}
	for _, u := range t.Uses {
		if usesEdge(s, u) {
			return true
		}
	}
	return false
}

func usesEdge(s *model.Seam, u *model.EdgeUse) bool {
	for _, v := range s.Uses() {
		if *v == *u || v.Edge == u.Edge && v.Instance == u.Instance && (v.Side == u.Side || v.Side == model.Neither || u.Side == model.Neither) {
			return true
		}
	}
	return false
}
