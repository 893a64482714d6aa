package dsl

// reservedName gives the first name that a node declares with a word that the
// language needs for itself, nil if there is none.
func reservedName(node any) *Name {
	for _, n := range declaredNames(node) {
		if n != nil && reserved[n.Text] {
			return n
		}
	}
	if n := bareName(node); n != nil && beginsPhrase[n.Text] {
		return n
	}
	return nil
}

// bareName is the name of what a step calls by that name alone, so that it must
// not begin with a word that begins a phrase: `sew right` would wait for `side`.
func bareName(node any) *Name {
	switch n := node.(type) {
	case *Piece:
		return n.ID
	case *Seam:
		return n.ID
	case *Notion:
		return n.ID
	case *Strip:
		return n.ID
	case *Make:
		return n.ID
	case *Shaping:
		return n.ID
	}
	return nil
}

// declaredNames lists the names that a sentence brings into the pattern.
func declaredNames(node any) []*Name {
	switch n := node.(type) {
	case *View:
		return []*Name{{Tokens: n.ID.Tokens, Text: n.ID.Text}}
	case *Option:
		return []*Name{n.ID}
	case *Choice:
		return []*Name{n.ID}
	case *ChoiceValues:
		var all []*Name
		for _, v := range n.Values {
			all = append(all, v.ID)
		}
		return all
	case *Material:
		return []*Name{n.ID}
	case *Notion:
		return []*Name{n.ID}
	case *Supply:
		return []*Name{n.ID}
	case *Parts:
		return n.Names
	case *Strip:
		return []*Name{n.ID}
	case *Step:
		return []*Name{n.ID}
	case *Method:
		return append([]*Name{n.ID}, n.Params...)
	}
	return garmentNames(node)
}

// garmentNames is declaredNames for pieces and what is made of them.
func garmentNames(node any) (all []*Name) {
	switch n := node.(type) {
	case *Piece:
		all = append(all, n.ID)
	case *Edges:
		for _, e := range n.Of {
			all = append(all, e.ID)
		}
	case *Marks:
		for _, m := range n.Of {
			all = append(all, m.ID)
		}
	case *Cut:
		for _, l := range n.Lay {
			all = append(all, l.As...)
		}
	case *FoldLine:
		all = append(all, n.ID)
	case *Seam:
		all = append(all, n.ID)
	case *Shaping:
		all = append(all, n.ID)
	case *Make:
		all = append(all, n.ID)
	case *MakeEdge:
		all = append(all, n.ID)
	}
	return all
}
