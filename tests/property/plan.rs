//! Whatever a plan or a plan file holds, it is judged without a panic.

use proptest::prelude::*;
use sim::plan::Plan;
use tests::plans;

proptest! {
    #[test]
    fn any_numbers_are_judged_with_reasons(plan in plans::plan()) {
        for fault in plan.validate() {
            prop_assert!(!fault.field.is_empty() && !fault.why.to_string().is_empty(), "{}", fault);
        }
    }

    #[test]
    fn any_plan_survives_its_file(plan in plans::plan()) {
        prop_assert_eq!(Plan::from_json(&plan.to_json()), Ok(plan));
    }

    #[test]
    fn a_damaged_file_is_a_fault_with_a_reason(plan in plans::plan(), at in any::<prop::sample::Index>(), byte in any::<u8>()) {
        let mut bytes = plan.to_json().into_bytes();
        let at = at.index(bytes.len());
        bytes[at] = byte;
        let text = String::from_utf8_lossy(&bytes);
        if let Err(fault) = Plan::from_json(&text) {
            prop_assert!(!fault.field.is_empty() && !fault.why.to_string().is_empty(), "{}", fault);
        }
    }
}
