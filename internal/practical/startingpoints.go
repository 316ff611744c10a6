package practical

// StartingPoint is a named shape of practical that a new one begins from and
// that a file can name with "like".
type StartingPoint struct {
	ID    string            // as a file names it
	Name  string            // as a screen shows it
	About string            // one sentence
	New   func() *Practical // a new practical of this shape, without dishes
}

// StartingPoints are the shapes that ship. Every figure in them is a setting
// for the teacher to change: local rules stand above them.
func StartingPoints() []StartingPoint {
	return []StartingPoint{
		{
			ID: "three-in-three", Name: "Three dishes in three hours",
			About: "One cook makes three dishes in one sitting of 180 minutes, after 30 minutes of set-up in which weighing and lining are allowed; tasting comes after the clock.",
			New:   threeInThree,
		},
		{
			ID: "two-in-two", Name: "Two dishes in two hours",
			About: "One cook makes two dishes in 120 minutes, after 15 minutes of set-up: the usual stepping-stone to a longer practical.",
			New:   twoInTwo,
		},
		{
			ID: "three-courses", Name: "Three courses in two and a half hours",
			About: "One cook makes starter, main and dessert in 150 minutes and serves them close together; weighing counts as work, so set-up is for gathering and washing.",
			New:   threeCourses,
		},
	}
}

// startingPoint is the one with this id, or nil.
func startingPoint(id string) *StartingPoint {
	for _, s := range StartingPoints() {
		if s.ID == id {
			return &s
		}
	}
	return nil
}

func threeInThree() *Practical {
	return &Practical{
		Title: "Three dishes in three hours",
		Cooks: 1,
		// One single session of at most 3 hours for three dishes: the regulator's rule for
		// England's GCSE. Set-up of 30 minutes is one of 15 to 45 in use.
		Clock:   Clock{SetUp: 8*60 + 30, Start: 9 * 60, Finish: 12 * 60, Hours: 24, Round: 1},
		Rules:   usualRules(3, "weigh", "measure", "gather", "collect", "wash", "grease", "line", "label", "set", "lay", "open"),
		Kitchen: usualKitchen(),
	}
}

func twoInTwo() *Practical {
	p := &Practical{
		Title:   "Two dishes in two hours",
		Cooks:   1,
		Clock:   Clock{SetUp: 8*60 + 45, Start: 9 * 60, Finish: 11 * 60, Hours: 24, Round: 5}, // school pages: practice for a first year
		Rules:   usualRules(2, "weigh", "measure", "gather", "collect", "wash", "grease", "line", "label", "set", "lay", "open"),
		Kitchen: usualKitchen(),
	}
	p.Rules.OvenInSetUp = true // a lit oven is allowed in some places; common practice, no source
	return p
}

func threeCourses() *Practical {
	p := &Practical{
		Title: "Three courses in two and a half hours",
		Cooks: 1,
		// Starter, main course and dessert in 2 h 30: Scotland's National 5. Its length of
		// set-up is not published; 30 minutes is common practice, no source.
		Clock:   Clock{SetUp: 8*60 + 30, Start: 9 * 60, Finish: 11*60 + 30, Hours: 24, Round: 5},
		Rules:   usualRules(3, "gather", "collect", "wash", "label", "set", "lay"),
		Kitchen: usualKitchen(),
	}
	p.Rules.Window = 15 // "service details" are marked, so courses come close together; common practice, no source
	return p
}

// usualRules are common practice without a source where no other is named.
func usualRules(dishes int, setUpVerbs ...string) Rules {
	return Rules{
		Dishes:        dishes,
		SetUpVerbs:    setUpVerbs,
		TastingInside: false, // after the time in one English school; inside it in Ireland
		Tasting:       10,
		CleanInside:   true, // Ireland's older examination: kit washed within the time
		CleanDown:     8,    // wash up and clear down: 5 to 12 minutes
		WashEvery:     60,   // washing up at convenient points, not only at the end: plan guidance
		WashUp:        5,    // 15 to 20 minutes of washing up in 180
		RawClean:      4,    // two-stage clean and hands of 20 s
		Rinse:         2,
		Window:        20,
		Looks:         2,
		Pace:          Likely,
	}
}

// usualKitchen is a single domestic cooker and one cook's share of the room's
// kit: four rings, two shelves, a separate grill. Common practice, no source.
func usualKitchen() Kitchen {
	return Kitchen{
		Ovens:          []Oven{{Name: "oven", Fuel: Fan, Shelves: 2}},
		Rings:          4,
		Grill:          SeparateGrill,
		Processors:     1,
		Mixers:         1,
		Microwaves:     1,
		FridgeShelves:  1,
		FreezerShelves: 1,
	}
}
