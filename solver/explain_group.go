package solver

import (
	"encoding/binary"
	"math/bits"
)

// group is a set of demands by their index in the list of names, in words of
// 64. It is never changed once others may hold it.
type group []uint64

func newGroup(size int) group { return make(group, (size+63)/64) }

func (g group) has(i int) bool { return g[i/64]&(1<<(i%64)) != 0 }

// with and without are g with one member more or less.
func (g group) with(i int) group {
	out := append(group(nil), g...)
	out[i/64] |= 1 << (i % 64)
	return out
}

func (g group) without(i int) group {
	out := append(group(nil), g...)
	out[i/64] &^= 1 << (i % 64)
	return out
}

func (g group) or(h group) group {
	out := make(group, len(g))
	for w := range g {
		out[w] = g[w] | h[w]
	}
	return out
}

func (g group) less(h group) group {
	out := make(group, len(g))
	for w := range g {
		out[w] = g[w] &^ h[w]
	}
	return out
}

// within says that every member of g is one of h.
func (g group) within(h group) bool {
	for w := range g {
		if g[w]&^h[w] != 0 {
			return false
		}
	}
	return true
}

// meets says that g and h have a member in common.
func (g group) meets(h group) bool {
	for w := range g {
		if g[w]&h[w] != 0 {
			return true
		}
	}
	return false
}

func (g group) size() (n int) {
	for _, word := range g {
		n += bits.OnesCount64(word)
	}
	return n
}

// members lists g in rising order.
func (g group) members() (list []int) {
	for w, word := range g {
		for ; word != 0; word &= word - 1 {
			list = append(list, 64*w+bits.TrailingZeros64(word))
		}
	}
	return list
}

// key is g as a map's key.
func (g group) key() string {
	out := make([]byte, 0, 8*len(g))
	for _, word := range g {
		out = binary.LittleEndian.AppendUint64(out, word)
	}
	return string(out)
}
