package match

// assign gives each row of the matrix a column of its own with the greatest
// sum; rows beyond the columns take their best. Exact up to eight rows, by all
// ways; beyond, the rows with most evidence choose first.
func assign(matrix [][]float64, columns int) []int {
	if len(matrix) > 8 || columns > 8 {
		return greedy(matrix, columns)
	}
	best, chosen := -1.0, make([]int, len(matrix))
	current, used := make([]int, len(matrix)), make([]bool, columns)
	var try func(i, free int, sum float64)
	try = func(i, free int, sum float64) {
		if i == len(matrix) {
			if sum > best {
				best = sum
				copy(chosen, current)
			}
			return
		}
		for c := range columns {
			if used[c] && free > 0 {
				continue
			}
			was := used[c]
			used[c], current[i] = true, c
			left := free
			if !was {
				left--
			}
			try(i+1, left, sum+matrix[i][c])
			used[c] = was
		}
	}
	try(0, columns, 0)
	return chosen
}

func greedy(matrix [][]float64, columns int) []int {
	chosen := make([]int, len(matrix))
	for i, row := range matrix {
		for c := range columns {
			if row[c] > row[chosen[i]] {
				chosen[i] = c
			}
		}
	}
	return chosen
}
