def test_the_letter_can_be_changed_and_taken_along(advised, advice):
    advised.switch_page("views/customer.py").run()
    assert advice.options[0].spoken in advised.text_area[0].value
    advised.text_area[0].set_value("Dear Sir").run()
    assert not advised.exception
    assert advised.text_area[0].value == "Dear Sir"
