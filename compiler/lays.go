package compiler

import (
	"sync"

	"seamwarden/compiler/check"
	"seamwarden/compiler/condition"
	"seamwarden/compiler/lay/wanted"
	"seamwarden/compiler/model"
)

// lays says which lays a pattern needs. They are drawn out when they are first asked
// for; what of them is not known is listed as not checked.
func (r *reader) lays(p *model.Pattern) {
	names := check.Names(p)
	words := func(c condition.Cond) string { return p.Space.Words(p.Space.Smallest(c, p.Valid), names) }
	plan := wanted.Sets(p, words)
	for _, n := range plan.Not() {
		p.Unchecked = append(p.Unchecked, model.Unchecked{What: n.What(words(n.Cond)), Span: n.Span})
	}
	p.Layings = sync.OnceValue(func() []*model.Laying { return plan.Draw().Lays })
}
