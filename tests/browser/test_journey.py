"""From the form to the ranked table, the reasons and the chart, as a visitor would go."""

REQUIREMENT = """
[part]
name = "claw"
[[part.section]]
shape = "round"
size = "25 mm"
length = "30 mm"
[[part.section]]
shape = "round"
size = "25 mm"
length = "150 mm"
[[part.feature]]
kind = "teeth"
at = "5 mm"
[[zone]]
section = [1]
wear = "sliding"
severity = "medium"
hardness = { min = "50 HRC", max = "56 HRC" }
[[zone]]
section = [2]
wear = "none"
[load]
torque = "90 lb ft"
impact = "light"
cycles = "occasional"
[workshop]
heat = [{ source = "oxy-propane" }, { source = "kitchen-oven" }]
bath = [{ medium = "warm-water" }, { medium = "oil" }]
turns_part = true
"""


def open_form(page, server):
    page.goto(server)
    page.get_by_role("heading", name="Part", exact=True).first.wait_for()
    page.locator('input[type="file"]').set_input_files(
        {"name": "claw.toml", "mimeType": "text/plain", "buffer": REQUIREMENT.encode()}
    )
    page.get_by_text("Please answer: If it breaks in use, what is at risk?").first.wait_for()


def ask(page):
    page.get_by_text("Could hurt someone nearby").click()
    page.get_by_role("button", name="Advise").click()
    page.get_by_role("heading", name="claw", exact=True).wait_for()


def test_form_to_chart(page, server, violations, picture):
    open_form(page, server)
    assert violations() == {}
    picture("part")
    ask(page)
    page.get_by_role("heading", name="Ranked").wait_for()
    page.locator('[data-testid="stVegaLiteChart"] svg.marks').wait_for()
    picture("choice")
    assert violations() == {}
    page.get_by_text("Surface hardness", exact=True).last.click()
    page.wait_for_timeout(1500)
    picture("choice-hardness")
    for view, heading in (("Why not", "Assumed"), ("Cautions", "Before work")):
        page.get_by_role("link", name=view).click()
        page.get_by_role("heading", name=heading).wait_for()
        assert violations() == {}
        picture(view.lower().replace(" ", "-"))
