package wording

import (
	"fmt"
	"strings"

	"seamwarden/compiler/assembly"
	"seamwarden/compiler/model"
)

// like is what is spoken of in one breath: the copies of one cut line that have
// one name.
type like struct {
	cut  *model.Cut
	copy string
}

// parts words cut parts; a left and a right one are "both", several are counted.
func (w *inspector) parts(list []*model.Instance) (all []string) {
	groups := map[like][]*model.Instance{}
	var order []like
	for _, i := range list {
		k := like{i.Cut, i.Copy}
		if groups[k] == nil {
			order = append(order, k)
		}
		groups[k] = append(groups[k], i)
	}
	for _, k := range order {
		all = append(all, w.alike(groups[k]))
	}
	return once1(all)
}

func once1(list []string) (all []string) {
	seen := map[string]bool{}
	for _, s := range list {
		if !seen[s] {
			seen[s] = true
			all = append(all, s)
		}
	}
	return
}

func (w *inspector) alike(list []*model.Instance) string {
	i := list[0]
	name := lower(i.Piece.Name)
	if i.Copy != "" {
		name = strings.TrimPrefix(put(put(w.ph.Things["of-copy"], "copy", strings.ReplaceAll(i.Copy, "-", " ")), "name", name), "the ")
	}
	if several := clothsOf(i.Piece); several > 1 && i.Cloth() {
		name = put(put(w.say("from-cloth"), "name", name), "cloth", lower(i.Cut.Material.Name))
	}
	switch n := len(list); {
	case n == 2:
		return put(w.ph.Things["both"], "names", w.plural(name))
	case n > 2:
		return put(put(w.say("many"), "n", fmt.Sprint(n)), "names", w.plural(name))
	case i.Side != model.Neither:
		return put(w.ph.Things["piece-"+i.Side.String()], "name", name)
	}
	return put(w.ph.Things["piece"], "name", name)
}

// clothsOf counts the cloths that a piece is cut from.
func clothsOf(p *model.Piece) int {
	seen := map[*model.Material]bool{}
	for _, i := range p.Cloths() {
		seen[i.Cut.Material] = true
	}
	return len(seen)
}

func pathsOf(list []*model.Instance) (all []string) {
	for _, i := range list {
		all = append(all, i.Path())
	}
	return once1(all)
}

// loose words parts that hang on nothing, one kind in a line.
func (w *inspector) loose(list []*model.Instance) (lines []string) {
	groups := map[like][]*model.Instance{}
	for _, i := range list {
		k := like{i.Cut, i.Copy}
		groups[k] = append(groups[k], i)
	}
	for _, i := range list {
		k := like{i.Cut, i.Copy}
		if g := groups[k]; g != nil {
			lines = append(lines, w.with(w.alike(g), pathsOf(g)))
			delete(groups, k)
		}
	}
	return
}

func (w *inspector) openings(list []*model.Gap) (lines []string) {
	for _, g := range list {
		line := put(w.ph.Things["gap"], "name", g.Name)
		if g.Seam != nil {
			line += " in " + w.seam(g.Seam, false)
		}
		lines = append(lines, w.with(line, []string{g.ID}))
	}
	return
}

// line words a seam line: of a pair, which one.
func (w *inspector) line(j *model.Join) string {
	name := w.seam(j.Seam, false)
	if j.Side != model.Neither {
		name = put(w.ph.Things["piece-"+j.Side.String()], "name", strings.TrimPrefix(name, "the "))
	}
	return name
}

func (w *inspector) lines(list []*model.Join) (lines []string) {
	for _, j := range list {
		lines = append(lines, w.with(w.line(j), []string{seamPath(j)}))
	}
	return
}

func seamPath(j *model.Join) string {
	if j.Side == model.Neither {
		return j.Seam.ID
	}
	return j.Seam.ID + "." + j.Side.String()
}

// waiting words seams and the step that will press or finish them. Both sides of a
// pair stand in one line.
func (w *inspector) waiting(list []assembly.Waiting) (lines []string) {
	for n, x := range list {
		if n > 0 && list[n-1].Join.Seam == x.Join.Seam && list[n-1].By == x.By {
			continue
		}
		name, path := w.line(x.Join), seamPath(x.Join)
		if n+1 < len(list) && list[n+1].Join.Seam == x.Join.Seam && list[n+1].By == x.By {
			name, path = w.seam(x.Join.Seam, true), x.Join.Seam.ID
		}
		line := put(put(w.say("later"), "s", name), "n", fmt.Sprint(w.numbers[x.By.Step]))
		lines = append(lines, w.with(line, []string{path}))
	}
	return
}

// stock words what of the notions is left: "2 of 5 snaps".
func (w *inspector) stock(list []assembly.Taken) (lines []string) {
	for _, x := range list {
		left := x.Of - x.Used
		if left == 0 {
			continue
		}
		one, many, path := w.taken(x)
		line := put(put(put(w.say("of"), "n", fmt.Sprint(left)), "m", fmt.Sprint(x.Of)), "names", many)
		switch byLength := x.Notion != nil && x.Notion.Kind == model.ByLength; {
		case byLength && left == x.Of:
			line = put(w.ph.Things["piece"], "name", one)
		case byLength:
			line = put(put(put(w.say("part-used"), "name", one), "n", fmt.Sprint(left)), "m", fmt.Sprint(x.Of))
		case x.Of == 1:
			line = put(put(put(w.say("of"), "n", "1"), "m", "1"), "names", one)
		}
		lines = append(lines, w.with(line, []string{path}))
	}
	return
}

// taken names what is taken from stock, one of it and several.
func (w *inspector) taken(x assembly.Taken) (one, many, path string) {
	if x.Notion == nil {
		name := lower(x.Bit.Name)
		return name, w.plural(name), x.Bit.ID
	}
	path = x.Notion.ID
	t := &model.Target{Kind: model.ToNotion, Notion: x.Notion, NotionBit: x.Half}
	one = strings.TrimPrefix(w.thing(t, false), "the ")
	if x.Half == "" {
		return one, w.plural(one), path
	}
	halves := *t
	halves.NotionBit = w.plural(x.Half)
	return one, strings.TrimPrefix(w.thing(&halves, false), "the "), path + "." + x.Half
}
