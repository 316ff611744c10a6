# Writes plan.xlsx with openpyxl 3.0.9 (Debian 12); the plan is invented.
import datetime

import openpyxl
from openpyxl.comments import Comment
from openpyxl.styles import Font, PatternFill
from openpyxl.styles.colors import Color

book = openpyxl.Workbook()
sheet = book.active
sheet.title = "Plan"
sheet.append(["Time", "Dish", "Job"])
sheet.append([datetime.time(9, 5), "T", "Rub in"])
sheet.append([datetime.time(13, 20), "S", "Dice"])
sheet.append([datetime.datetime(2026, 5, 12, 14, 0), "S", "=1+1"])
sheet.append([datetime.timedelta(minutes=40), "B", 0.5])
sheet["B2"].fill = PatternFill("solid", fgColor="FFFFE699")
sheet["B3"].fill = PatternFill("solid", fgColor=Color(theme=5, tint=0.4))
sheet["C2"].font = Font(color="FFC00000", strike=True)
sheet["C5"].number_format = "0%"
sheet.merge_cells("A6:C6")
sheet["A6"] = "Wash up"
sheet["A2"].comment = Comment("x", "y")
sheet.freeze_panes = "A2"
book.create_sheet("Empty")
book.save("plan.xlsx")
