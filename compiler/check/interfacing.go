package check

import (
	"fmt"

	"seamwarden/compiler/condition"
	"seamwarden/compiler/model"
	"seamwarden/dsl/finding"
)

func init() {
	register(Rule{ID: "interfacing-never-fused", Severity: finding.Error, Category: "cutting", FromAbsence: true, run: neverFused,
		Purpose: "Interfacing is cut and no step puts it in.",
		Why:     "The piece stays limp, and there is a piece of interfacing left over that nobody can place."})
	register(Rule{ID: "interfacing-not-cut", Severity: finding.Error, Category: "cutting", run: fusedNotCut,
		Purpose: "A step fuses a piece for which no interfacing is cut.",
		Why:     "The sewist looks for a piece that she was never told to cut."})
	register(Rule{ID: "glue-side-wrong", Severity: finding.Error, Category: "cutting", run: glueSide,
		Purpose: "Interfacing comes out as the mirror image of the piece that it is fused to.",
		Why:     "The glue goes against the wrong side of the cloth. A piece cut right side up therefore takes interfacing cut glue side up; turned over, it fits the other hand."})
}

// interfacings gives the interfacing that a fuse operation puts in: what it
// names, or all that is cut for the piece it names.
func interfacings(t *model.Target) (all []*model.Instance) {
	for _, i := range t.Instances {
		if !i.Cloth() {
			all = append(all, i)
		}
	}
	if len(all) > 0 {
		return
	}
	seen := map[*model.Piece]bool{}
	for _, i := range t.Instances {
		if seen[i.Piece] {
			continue
		}
		seen[i.Piece] = true
		for _, x := range i.Piece.Interfacings() {
			if t.Side == model.Neither || x.Side == model.Neither || x.Side == t.Side {
				all = append(all, x)
			}
		}
	}
	return
}

func neverFused(r *run) {
	put := map[*model.Instance]condition.Cond{}
	for _, f := range r.facts.Fusing {
		for _, i := range interfacings(f.Target) {
			put[i] = r.Space.Or(put[i], f.Cond)
		}
	}
	for _, p := range r.Pieces {
		for _, c := range p.Cuts {
			if !c.Material.Interfacing {
				continue
			}
			bad := condition.False
			for _, i := range c.Instances {
				in := r.Space.Or(put[i], r.facts.Used[i])
				bad = r.Space.Or(bad, r.Space.Diff(i.Cond, in))
			}
			verb := "fuse"
			if !c.Material.Fusible {
				verb = "baste"
			}
			r.report(bad, at(c.Span, "cut here", fmt.Sprintf("%s for %s is cut and never put in.", Upper(lower(c.Material.Name)), the(p.Name)),
				fmt.Sprintf("Add `%s %s` to a step before the piece is sewn, or leave the interfacing out.", verb, p.ID)))
		}
	}
}

func fusedNotCut(r *run) {
	for _, f := range r.facts.Fusing {
		cut := condition.False
		for _, i := range interfacings(f.Target) {
			cut = r.Space.Or(cut, i.Cond)
		}
		what := f.Target.Describe()
		x := at(f.Target.Span, "nothing to fuse", fmt.Sprintf("This step fuses %s, and no interfacing is cut for it.", what), "Add a cut line to the piece: cut 1 INTERFACING …, or take the operation out.")
		r.report(r.Space.Diff(f.Cond, cut), also(x, f.Target.Declared(), "declared here"))
	}
}

// glueSide compares the hands of a piece and its interfacing: faces alike, so
// the hands must be the same.
func glueSide(r *run) {
	for _, p := range r.Pieces {
		if p.Symmetric {
			continue
		}
		for _, in := range p.Cuts {
			if !in.Material.Fusible {
				continue
			}
			for _, cloth := range p.Cuts {
				if cloth.Material.Interfacing {
					continue
				}
				both := r.Space.And(in.Cond, cloth.Cond)
				if !fits(cloth, in) {
					r.report(both, wrongGlue(p, cloth, in))
				}
			}
		}
	}
}

// fits reports whether every interfacing finds a cloth of its hand; one that may
// be either fits all.
func fits(cloth, in *model.Cut) bool {
	for _, i := range in.Instances {
		ok := i.Hand == 0
		for _, c := range cloth.Instances {
			ok = ok || c.Hand == 0 || c.Hand == i.Hand
		}
		if !ok {
			return false
		}
	}
	return true
}

func wrongGlue(p *model.Piece, cloth, in *model.Cut) finding.Finding {
	f := at(in.Span, "comes out as the mirror image", fmt.Sprintf("The interfacing of %s does not fit it: it is cut as its mirror image.", the(p.Name)), "")
	switch {
	case cloth.Lay.Up == model.FaceUp:
		f.Help = "The cloth is cut right side up, so cut the interfacing `glue side up`."
	case cloth.Lay.Up == model.FaceDown:
		f.Help = "The cloth is cut wrong side up, so cut the interfacing `glue side down`."
	default:
		f.Help = "The cloth is cut as a pair, so cut the interfacing `mirrored` as well."
	}
	return also(f, cloth.Span, "the cloth is cut so")
}
