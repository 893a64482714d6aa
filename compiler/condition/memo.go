package condition

// memo remembers the results of operations: a table with open addressing, since
// many short checks are made and a map costs more than the operation itself.
type memo struct {
	entries []memoEntry // a power of two, at most half full
	count   int
}

// memoEntry is free where its key is 0; no key of an operation on what is no
// terminal is.
type memoEntry struct {
	key uint64
	c   Cond
}

// key is an operation and what it is done to.
type key uint64

func keyOf(o op, a, b Cond) key { return key(o)<<62 | key(uint32(a))<<31 | key(uint32(b)) }

// at gives the place where a key stands, or where it belongs.
func (m *memo) at(k key) *memoEntry {
	mask := uint64(len(m.entries) - 1)
	for i := uint64(k) * 0x9e3779b97f4a7c15 >> 32 & mask; ; i = (i + 1) & mask {
		if e := &m.entries[i]; e.key == uint64(k) || e.key == 0 {
			return e
		}
	}
}

func (m *memo) get(k key) (Cond, bool) {
	if m.count == 0 {
		return False, false
	}
	e := m.at(k)
	return e.c, e.key != 0
}

func (m *memo) put(k key, c Cond) {
	if 2*m.count >= len(m.entries) {
		m.grow()
	}
	if e := m.at(k); e.key == 0 {
		*e = memoEntry{uint64(k), c}
		m.count++
	}
}

func (m *memo) grow() {
	old := m.entries
	m.entries = make([]memoEntry, max(256, 2*len(old)))
	for _, e := range old {
		if e.key != 0 {
			*m.at(key(e.key)) = e
		}
	}
}
