package check

import (
	"fmt"

	"seamwarden/compiler/assembly"
	"seamwarden/compiler/condition"
	"seamwarden/compiler/model"
	"seamwarden/dsl/finding"
)

func init() {
	register(Rule{ID: "interfacing-not-cut", Severity: finding.Error, Category: "interfacing", whole: true, ahead: 3, run: fusedNotCut,
		Purpose: "A step fuses a piece for which no interfacing is cut.",
		Why:     "The sewist looks for a piece that she was never told to cut."})
	register(Rule{ID: "interfacing-never-fused", Severity: finding.Error, Category: "interfacing", FromAbsence: true, ahead: 2, run: neverFused,
		Purpose: "Interfacing is cut and no step puts it in.",
		Why:     "The piece stays limp, and there is a piece of interfacing left over that nobody can place."})
	register(Rule{ID: "interfacing-left-over", Severity: finding.Error, Category: "interfacing", run: leftOver,
		Purpose: "More pieces of interfacing are cut than there are pieces of cloth to put them on.",
		Why:     "One is left over, and nobody can say whether a layer is missing or a number is wrong."})
	register(Rule{ID: "glue-side-wrong", Severity: finding.Error, Category: "interfacing", run: glueSide,
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

// limp is interfacing of one cut line that no step puts in.
type limp struct {
	cut   *model.Cut
	parts []*model.Instance // which of it
	bad   condition.Cond
}

func (r *run) limps() (all []limp) {
	put := map[*model.Instance]condition.Cond{}
	for _, f := range r.facts.Fusing {
		for _, i := range interfacings(f.Target) {
			put[i] = r.Space.Or(put[i], f.Cond)
		}
	}
	r.sewnIn(put)
	for _, p := range r.Pieces {
		for _, c := range p.Cuts {
			if !c.Material.Interfacing {
				continue
			}
			x := limp{cut: c}
			for _, i := range c.Instances {
				bad := r.Space.Diff(i.Cond, r.Space.Any(put[i], r.facts.Used[i], r.uncut[p]))
				if r.possible(bad) {
					x.bad, x.parts = r.Space.Or(x.bad, bad), append(x.parts, i)
				}
			}
			if len(x.parts) > 0 {
				all = append(all, x)
			}
		}
	}
	return
}

// sewnIn notes interfacing without glue that is basted or stitched in.
func (r *run) sewnIn(put map[*model.Instance]condition.Cond) {
	for _, op := range r.Ops() {
		if !oneOf(op.Verb, []string{"baste", "stitch", "tack", "quilt", "lay", "pin"}) {
			continue
		}
		for _, o := range op.Objects {
			o.Each(func(t *model.Target) {
				if t.Kind != model.ToPiece && t.Kind != model.ToPart {
					return
				}
				for _, i := range interfacings(t) {
					if !i.Cut.Material.Fusible {
						put[i] = r.Space.Or(put[i], r.Space.And(op.Cond, t.Cond))
					}
				}
			})
		}
	}
}

func neverFused(r *run) {
	for _, x := range r.limps() {
		c := x.cut
		verb := "fuse"
		if !c.Material.Fusible {
			verb = "baste"
		}
		name := the(c.Piece.Name)
		if len(x.parts) < len(c.Instances) {
			name = partWords(x.parts[0])
		}
		f := at(c.Span, "cut here", fmt.Sprintf("%s for %s is cut and never put in.", c.Material.Name, name),
			fmt.Sprintf("Add `%s %s` to a step before the piece is sewn, or leave the interfacing out.", verb, c.Piece.ID))
		r.report(r.unsaid(c, x.bad), f)
	}
}

// fusedNotCut looks for steps that fuse what has no interfacing. Where one
// interfacing alone waits to be put in, it was probably meant.
func fusedNotCut(r *run) {
	waiting := r.limps()
	for _, f := range r.facts.Fusing {
		cut := condition.False
		for _, i := range interfacings(f.Target) {
			cut = r.Space.Or(cut, i.Cond)
		}
		bad := r.Space.Diff(f.Cond, cut)
		x := at(f.Target.Span, "nothing to fuse", fmt.Sprintf("This step fuses %s, and no interfacing is cut for it.", targetWords(f.Target)),
			"Add a cut line to the piece: cut 1 INTERFACING …, or take this out.")
		x = also(x, f.Target.Declared(), "declared here")
		for k, w := range waiting {
			meant := r.Space.And(bad, r.onlyOne(waiting, k))
			if r.possible(meant) && r.Space.Implies(r.Space.And(bad, r.Valid), meant) {
				x.Help = fmt.Sprintf("The interfacing of %s is cut and never put in: did you mean `fuse %s`?", the(w.cut.Piece.Name), w.cut.Piece.ID)
				x = also(x, w.cut.Span, "cut here and never put in")
			}
			r.tell(w.cut, meant)
		}
		r.report(bad, x)
	}
}

// onlyOne is where the k-th interfacing waits alone.
func (r *run) onlyOne(waiting []limp, k int) condition.Cond {
	c := waiting[k].bad
	for i, w := range waiting {
		if i != k {
			c = r.Space.Diff(c, w.bad)
		}
	}
	return c
}

// targetWords names what a reference leads to, with an article.
func targetWords(t *model.Target) string {
	if t.Kind == model.ToPiece {
		return the(t.Piece.Name)
	}
	return t.Describe()
}

// leftOver compares how many pieces of interfacing and of cloth one piece is cut,
// and how many of the cloth the steps fuse. Copies that have names are layers on
// purpose.
func leftOver(r *run) {
	for _, p := range r.Pieces {
		var cloth []assembly.Amount
		in := map[*model.Material][]*model.Cut{}
		var order []*model.Material
		for _, c := range p.Cuts {
			switch {
			case !c.Material.Interfacing:
				cloth = append(cloth, assembly.Amount{N: c.Count, Cond: c.Cond})
			case len(c.Lay.Names) == 0:
				if in[c.Material] == nil {
					order = append(order, c.Material)
				}
				in[c.Material] = append(in[c.Material], c)
			}
		}
		fused := r.fusedParts(p)
		for _, m := range order {
			r.tooMany(p, cloth, in[m], func(k int) string { return fmt.Sprintf("which is cut %s from cloth", times(k)) })
			r.tooMany(p, fused, in[m], func(k int) string { return fmt.Sprintf("of which %d %s fused", k, isOrAre(k)) })
		}
	}
}

// fusedParts are the cut parts of a piece that steps fuse, if they name some of
// them; none where they name the piece as a whole.
func (r *run) fusedParts(p *model.Piece) (all []assembly.Amount) {
	put := map[*model.Instance]condition.Cond{}
	some := false
	for _, f := range r.facts.Fusing {
		if f.Target.Piece != p || f.Target.Kind != model.ToPiece {
			continue
		}
		for _, i := range f.Target.Instances {
			if !i.Cloth() {
				return nil // it is the interfacing that is named
			}
			some = some || i.Copy != ""
			put[i] = r.Space.Or(put[i], r.Space.And(f.Cond, i.Cond))
		}
	}
	if !some {
		return nil
	}
	for _, i := range p.Cloths() {
		all = append(all, assembly.Amount{N: 1, Cond: put[i]})
	}
	return
}

// tooMany reports where more of an interfacing is cut than there is to put it on.
// only says how many there are.
func (r *run) tooMany(p *model.Piece, cloth []assembly.Amount, in []*model.Cut, only func(int) string) {
	var all []assembly.Amount
	for _, c := range in {
		all = append(all, assembly.Amount{N: c.Count, Cond: c.Cond})
	}
	have, layers := r.facts.Totals(cloth), r.facts.Totals(all)
	last := in[len(in)-1]
	for _, n := range assembly.Sums(layers) {
		for _, k := range assembly.Sums(have) {
			if k == 0 || n <= k {
				continue
			}
			f := at(last.CountSpan, fmt.Sprintf("%d here", last.Count), fmt.Sprintf("%s is cut %s for %s, %s.", last.Material.Name, times(n), the(p.Name), only(k)),
				"Change one of the numbers. Layers that go on one another have names: `cut 2 … as first, second`.")
			bad := r.unsaid(last, r.Space.And(have[k], layers[n]))
			r.report(bad, f)
			r.tell(last, bad)
		}
	}
}

func times(n int) string {
	switch n {
	case 1:
		return "once"
	case 2:
		return "twice"
	}
	return fmt.Sprintf("%d times", n)
}
