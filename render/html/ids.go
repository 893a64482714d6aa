package html

import (
	"fmt"
	"strconv"
	"unicode"

	"seamwarden/compiler/booklet"
)

// register holds the ids of the page, so that each is given once. Ids of the
// booklet are entered first; those the page needs besides then keep clear of
// them.
type register struct{ taken map[string]bool }

// collectIDs enters every id of the booklet. It is an error if one stands twice
// or cannot be the end of a link.
func collectIDs(b *booklet.Booklet) (*register, error) {
	r := &register{taken: map[string]bool{}}
	for _, v := range b.Cover.Views {
		if err := r.enter(v.ID); err != nil {
			return nil, err
		}
		if v.Figure != nil {
			if err := r.enter(v.Figure.ID); err != nil {
				return nil, err
			}
		}
	}
	for _, c := range b.Chapters {
		if err := r.enter(c.ID); err != nil {
			return nil, err
		}
		if err := r.enterAll(c.Blocks); err != nil {
			return nil, fmt.Errorf("chapter %q: %w", c.Title, err)
		}
	}
	return r, nil
}

func (r *register) enterAll(blocks []booklet.Block) error {
	for _, b := range blocks {
		for _, id := range idsOf(b) {
			if err := r.enter(id); err != nil {
				return err
			}
		}
		inner, err := children(b)
		if err != nil {
			return err
		}
		if err := r.enterAll(inner); err != nil {
			return err
		}
	}
	return nil
}

// idsOf lists the ids that a block itself carries.
func idsOf(b booklet.Block) []string {
	switch x := b.(type) {
	case *booklet.Heading:
		return []string{x.ID}
	case *booklet.Table:
		ids := []string{x.ID}
		for _, r := range x.Rows {
			for _, c := range r.Cells {
				for _, f := range c.Figures {
					ids = append(ids, f.ID)
				}
			}
		}
		return ids
	case *booklet.Figure:
		return []string{x.ID}
	case *booklet.Step:
		return []string{x.ID}
	case *booklet.Terms:
		var ids []string
		for _, t := range x.Items {
			ids = append(ids, t.ID)
		}
		return ids
	}
	return nil
}

// enter takes an id of the booklet; "" is none.
func (r *register) enter(id string) error {
	if id == "" {
		return nil
	}
	for _, c := range id {
		if !unicode.IsLetter(c) && !unicode.IsDigit(c) && c != '-' && c != '_' && c != '.' && c != ':' {
			return fmt.Errorf("the id %q holds %q, which a link cannot carry", id, c)
		}
	}
	if r.taken[id] {
		return fmt.Errorf("the id %q is used twice", id)
	}
	r.taken[id] = true
	return nil
}

// fresh gives an id that nothing else has: name, or name with a number.
func (r *register) fresh(name string) string {
	id := name
	for n := 2; r.taken[id]; n++ {
		id = name + "-" + strconv.Itoa(n)
	}
	r.taken[id] = true
	return id
}
