package lay

import (
	"slices"
	"sync"
)

// memo is what has been worked out of a piece, for all the jobs that have it.
type memo struct {
	mu      sync.Mutex
	content string
	normal  *Piece
	groups  map[memoKey][]group
}

type memoKey struct {
	way       Way
	nap       bool
	clearance int64
}

// Keep lets the piece remember what is worked out of it, in all its copies. It must not
// be changed afterwards. Copies may be used by several goroutines at once.
func (p *Piece) Keep() { p.memo = &memo{groups: map[memoKey][]group{}} }

// kept is what a function makes of the piece, worked out once if it may be kept.
func (p Piece) kept(make func() string) string {
	if p.memo == nil {
		return make()
	}
	p.memo.mu.Lock()
	defer p.memo.mu.Unlock()
	if p.memo.content == "" {
		p.memo.content = make()
	}
	return p.memo.content
}

// groupsOf lists the placements of piece i if the cloth lies in a way.
func (j Job) groupsOf(i int, w Way) ([]group, error) {
	p := j.Pieces[i]
	if p.memo == nil {
		return j.of(i, p.normal(), w)
	}
	p.memo.mu.Lock()
	defer p.memo.mu.Unlock()
	key := memoKey{w, j.Cloth.Nap, j.Cloth.Clearance}
	all, known := p.memo.groups[key]
	if !known {
		if p.memo.normal == nil {
			n := p.normal()
			p.memo.normal = &n
		}
		var err error
		if all, err = j.of(0, *p.memo.normal, w); err != nil {
			return nil, err
		}
		p.memo.groups[key] = all
	}
	own := slices.Clone(all)
	for k := range own {
		own[k].piece, own[k].poses = i, slices.Clone(own[k].poses)
		for n := range own[k].poses {
			own[k].poses[n].place.Piece = i
		}
	}
	return own, nil
}
