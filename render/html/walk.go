package html

import (
	"errors"

	"seamwarden/compiler/booklet"
)

var (
	errUnknownBlock = errors.New("the booklet holds a kind of block that the page cannot set")
	errUnknownText  = errors.New("the booklet holds a kind of text that the page cannot set")
)

// children lists the blocks that stand directly inside a block, in reading
// order. It is an error if the kind of block is unknown, so that every pass over
// the booklet notices it.
func children(b booklet.Block) ([]booklet.Block, error) {
	var inner []booklet.Block
	switch x := b.(type) {
	case *booklet.Heading, *booklet.Paragraph, *booklet.Table, *booklet.Figure, *booklet.Caution:
	case *booklet.List:
		for _, item := range x.Items {
			inner = append(inner, item...)
		}
	case *booklet.Terms:
		for _, t := range x.Items {
			inner = append(inner, t.Blocks...)
		}
	case *booklet.Group:
		inner = x.Blocks
	case *booklet.Step:
		inner = append(inner, x.Blocks...)
		for _, f := range x.Figures {
			inner = append(inner, f)
		}
	default:
		return nil, errUnknownBlock
	}
	return inner, nil
}
