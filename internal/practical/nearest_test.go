package practical

import "testing"

func TestEdits(t *testing.T) {
	// "kitten" to "sitting" is the textbook pair; a swap of neighbours counts once.
	for _, tt := range []struct {
		a, b string
		want int
	}{{"kitten", "sitting", 3}, {"", "abc", 3}, {"same", "same", 0}, {"huors", "hours", 1}, {"flaw", "lawn", 2}} {
		if got := edits(tt.a, tt.b); got != tt.want {
			t.Errorf("edits(%q, %q) = %d, want %d", tt.a, tt.b, got, tt.want)
		}
		if got := edits(tt.b, tt.a); got != tt.want {
			t.Errorf("edits(%q, %q) = %d, want %d", tt.b, tt.a, got, tt.want)
		}
	}
}

func TestNearest(t *testing.T) {
	known := []string{"hands", "wait", "after", "set-up"}
	for word, want := range map[string]string{"hand": "hands", "Waits": "wait", "setup": "set-up", "afer": "after", "colour": "", "": "", "x": ""} {
		if got := nearest(word, known); got != want {
			t.Errorf("nearest(%q) = %q, want %q", word, got, want)
		}
	}
}

func TestAround(t *testing.T) {
	for likely, want := range map[int]Estimate{0: {}, 1: {1, 1, 1}, 2: {2, 2, 3}, 3: {2, 3, 4}, 8: {6, 8, 11}, 12: {9, 12, 16}, 600: {450, 600, 600}, -4: {-4, -4, -4}, 700: {700, 700, 700}} {
		if got := Around(likely); got != want {
			t.Errorf("Around(%d) = %v, want %v", likely, got, want)
		}
	}
}
